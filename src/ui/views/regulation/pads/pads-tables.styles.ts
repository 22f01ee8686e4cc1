import { css } from 'lit';

/** Tables and bars of the pads pages. */
export const padsTableStyles = css`
  .pd-cups {
    grid-area: cups;
  }
  .pd-head,
  .pd-row {
    display: grid;
    grid-template-columns: 9rem repeat(3, 6.5rem) minmax(0, 1fr) 5rem 8rem 8rem;
    gap: 0 var(--vw-space-3);
    align-items: start;
    padding: 0.35rem 0.25rem;
    border-bottom: 1px solid var(--vw-well);
  }
  .pd-head {
    font-size: var(--vw-text-aside);
    font-weight: 600;
    background: var(--vw-well);
  }
  .pd-chosen {
    background: var(--vw-try-weak);
  }
  .pd-key {
    width: 100%;
    min-height: var(--vw-touch);
    padding: 0 0.25rem;
    font: inherit;
    text-align: left;
    color: var(--vw-ink);
    background: none;
    border: 0;
    border-radius: var(--vw-round);
    cursor: pointer;
  }
  .pd-key:hover {
    background: var(--vw-well);
  }
  .pd-key b {
    display: inline-block;
    min-width: 1.5rem;
  }
  .pd-cell input {
    width: 100%;
    min-height: var(--vw-touch);
    padding: 0 0.5rem;
    font: inherit;
    font-variant-numeric: tabular-nums;
    color: inherit;
    background: var(--vw-sheet);
    border: 1px solid var(--vw-soft);
    border-radius: var(--vw-round);
  }
  .pd-cell input[aria-invalid='true'] {
    border: 2px solid var(--vw-wrong);
    background: var(--vw-wrong-ground);
  }
  .pd-cell small,
  .pd-take small {
    display: block;
    min-height: 1.2em;
    font-size: var(--vw-text-fine);
    color: var(--vw-soft);
  }
  .pd-row > .pd-problem {
    grid-column: 1 / -1;
    font-size: var(--vw-text-aside);
    color: var(--vw-wrong);
    font-weight: 600;
  }
  .pd-take,
  .pd-bed,
  .pd-why {
    min-height: var(--vw-touch);
    padding-top: 0.25rem;
  }
  .pd-bed {
    padding-top: 0.7rem;
    white-space: nowrap;
  }
  .pd-why {
    padding-top: 0.7rem;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .pd-take b {
    margin-right: 0.35rem;
    color: var(--vw-try);
  }
  .pd-take[data-kind='measure each'] b {
    color: var(--vw-caution);
  }
  .pd-take[data-kind='nothing fits'] b {
    color: var(--vw-wrong);
  }
  .pd-bar {
    position: relative;
    display: flex;
    height: 10px;
    margin: 0.2rem 0;
    background: var(--vw-well);
  }
  .pd-bar .floor {
    position: absolute;
    top: -2px;
    margin-left: -3px;
  }
  .pd-order {
    grid-area: order;
    display: flex;
    flex-wrap: wrap;
    justify-content: space-between;
    align-items: center;
    gap: 0.4rem;
  }
  .pd-take-them {
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem;
    margin: 0;
  }
  .pd-proposed {
    width: 100%;
    margin: 0;
    font-size: var(--vw-text-aside);
    color: var(--vw-soft);
  }
  .pd-order table {
    width: 100%;
    border-collapse: collapse;
  }
  .pd-order th,
  .pd-order td {
    padding: 0.3rem 0.5rem;
    text-align: left;
    vertical-align: top;
    border-bottom: 1px solid var(--vw-well);
  }
  .pd-order thead th {
    font-size: var(--vw-text-aside);
    background: var(--vw-well);
  }
  .pd-plan {
    grid-area: plan;
    display: flex;
    flex-wrap: wrap;
    gap: 0.4rem 1.5rem;
    align-items: center;
    --vw-choice-size: 0.875rem;
  }
  .pd-plan vw-bench-field {
    width: 15rem;
  }
  .pd-choices {
    display: flex;
    flex-wrap: wrap;
    gap: 0.35rem;
  }
  .pd-openings {
    grid-area: openings;
  }
  .pd-notes {
    grid-area: notes;
  }
  .pd-openings ul,
  .pd-notes ul {
    margin: 0;
    padding: 0;
    list-style: none;
  }
  .pd-many {
    max-height: 40rem;
    overflow-y: auto;
  }
  .pd-openings li,
  .pd-notes li {
    display: grid;
    gap: 0 var(--vw-space-3);
    align-items: center;
    min-height: 1.7rem;
    font-size: var(--vw-text-control);
    border-bottom: 1px solid var(--vw-well);
  }
  .pd-openings li {
    grid-template-columns: 9.5rem minmax(0, 1fr) 8.5rem;
  }
  .pd-notes li {
    grid-template-columns: 8rem minmax(0, 1fr) 3.2rem 3.2rem;
  }
  .pd-openings li span:last-child,
  .pd-notes li span:nth-child(n + 3) {
    text-align: right;
    white-space: nowrap;
  }
  .pd-track {
    position: relative;
    height: 14px;
    background: linear-gradient(var(--vw-edge), var(--vw-edge)) center / 100% 1px no-repeat;
  }
  .pd-either {
    background: linear-gradient(var(--vw-edge), var(--vw-edge)) center / 1px 100% no-repeat;
  }
  .pd-track i {
    position: absolute;
    top: 1px;
    height: 12px;
  }
  .pd-track .moved,
  .pd-either .moved {
    top: 4px;
    height: 6px;
    background: var(--vw-try);
  }
  i.found,
  i.then,
  i.back {
    width: 12px;
    height: 12px;
  }
  .pd-track .found,
  .pd-track .then,
  .pd-track .back {
    margin-left: -6px;
  }
  i.found {
    border-radius: 50%;
    background: var(--vw-found);
  }
  i.then {
    background: var(--vw-try);
  }
  i.back {
    background: none;
    border: 2px solid var(--vw-enough);
    transform: rotate(45deg) scale(1.15);
  }
  .pd-numbers {
    grid-area: numbers;
    padding-block: 0;
  }
  .pd-numbers summary {
    font-size: var(--vw-text-head);
    font-weight: 700;
  }
  .pd-numbers h3 {
    margin: 0.5rem 0 0;
    font-size: var(--vw-text);
  }
  .pd-scroll {
    overflow-x: auto;
  }
  .pd-numbers table {
    width: 100%;
    border-collapse: collapse;
    font-size: var(--vw-text-control);
  }
  .pd-numbers th,
  .pd-numbers td {
    padding: 0.25rem 0.6rem;
    text-align: right;
    font-weight: 400;
    white-space: nowrap;
    border-bottom: 1px solid var(--vw-well);
  }
  .pd-numbers th:first-child {
    text-align: left;
  }
  .pd-numbers thead th {
    font-weight: 600;
    background: var(--vw-well);
  }
`;
