import { html, nothing, type TemplateResult } from 'lit';
import type { Bench } from '../../../shell/bench.ts';
import type { SeatView } from './seats.model.ts';

/** Seats as found: a touch marks one that leaks, a number says how wide. */
export function seatsPanel(seats: readonly SeatView[], bench: Bench): TemplateResult {
  const leaking = seats.filter(({ leaks }) => leaks);
  return html`
    <section class="wk-seats" aria-labelledby="wk-seats" @focusin=${() => bench.work.expectTyping()}>
      <h2 id="wk-seats">Seats that leak as found</h2>
      <p>Each key alone, by the light. Pads that become thicker or thinner are seated anew by themselves.</p>
      <div class="wk-pads" role="group" aria-labelledby="wk-seats">
        ${seats.map(
          ({ id, number, name, leaks }) => html`
            <button
              type="button"
              class="rg-quiet"
              data-seat=${id}
              aria-pressed=${leaks ? 'true' : 'false'}
              @click=${() => bench.work.setLeaks(id, !leaks)}
            >
              <b>${number}</b> ${name}${leaks ? html`<span class="wk-leaks"> leaks</span>` : nothing}
            </button>
          `,
        )}
      </div>
      ${
        leaking.length === 0
          ? nothing
          : html`<ul class="wk-widths">
              ${leaking.map((seat) => width(seat, bench))}
            </ul>`
      }
    </section>
  `;
}

function width({ id, name, text, echo, problem }: SeatView, bench: Bench): TemplateResult {
  const told = `wk-seat-${id}`;
  return html`
    <li>
      <label>
        <span>${name}, widest, papers</span>
        <input
          type="text"
          inputmode="decimal"
          autocomplete="off"
          spellcheck="false"
          data-leak=${id}
          data-shown=${text}
          aria-invalid=${problem === null ? 'false' : 'true'}
          aria-describedby=${told}
          .value=${text}
          @change=${(e: Event) => void bench.work.typeLeak(id, (e.target as HTMLInputElement).value)}
        />
      </label>
      <small id=${told} class=${problem === null ? '' : 'wk-problem'}>${problem ?? echo}</small>
    </li>
  `;
}
