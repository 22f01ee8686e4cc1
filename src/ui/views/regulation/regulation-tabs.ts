import { css, html, type TemplateResult } from 'lit';
import type { ViewName } from '../../state/view-names.ts';

/** The views of regulation, in the order they are used. */
const TABS: readonly { readonly name: string; readonly label: string }[] = [
  { name: 'links', label: 'Links' },
  { name: 'leaks', label: 'Leaks' },
  { name: 'pads', label: 'Pads' },
  { name: 'work', label: 'Work' },
];

/** The strip of tabs on top of every view of regulation: links to views, kept by the page's hash. */
export function regulationTabs(shown: ViewName): TemplateResult {
  return html`
    <nav class="rg-tabs" aria-label="Regulation">
      ${TABS.map(
        ({ name, label }) =>
          html`<a href="#${name}" aria-current=${name === shown ? 'page' : 'false'}>${label}</a>`,
      )}
    </nav>
  `;
}

/** To be adopted by every view that shows the tabs. */
export const regulationTabsStyles = css`
  .rg-tabs {
    grid-area: tabs;
    display: flex;
    gap: var(--vw-space-1);
    border-bottom: 2px solid var(--vw-edge);
  }
  .rg-tabs a {
    display: grid;
    place-items: center;
    flex: 0 1 8rem;
    min-width: var(--vw-touch);
    min-height: var(--vw-touch);
    margin-bottom: -2px;
    padding: 0 0.75rem;
    color: var(--vw-soft);
    text-decoration: none;
    border-bottom: 4px solid transparent;
    border-radius: var(--vw-round) var(--vw-round) 0 0;
  }
  .rg-tabs a:hover {
    background: var(--vw-well);
  }
  .rg-tabs a[aria-current='page'] {
    color: var(--vw-ink);
    font-weight: 700;
    border-bottom-color: var(--vw-try);
  }
  .rg-tabs a:focus-visible {
    outline: 3px solid var(--vw-try);
    outline-offset: -3px;
  }
  @media print {
    .rg-tabs {
      display: none;
    }
  }
`;
