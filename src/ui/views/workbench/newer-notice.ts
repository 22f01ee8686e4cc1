import { html, type TemplateResult } from 'lit';
import type { Bench } from '../../shell/bench.ts';

/**
 * Says that a newer program waits. It lies over the foot of the page, moves nothing, and takes no entry away: a text
 * in a field is read when the hand goes to the button, and all is saved before the page is loaded anew.
 */
export function newerNotice(bench: Bench): TemplateResult {
  return html`
    <aside class="wb-newer" role="status">
      <p>A newer Ventwright is ready. What is on the bench is kept.</p>
      <button type="button" @click=${() => void bench.newer('take')}>Take it now</button>
      <button type="button" @click=${() => void bench.newer('put off')}>Later</button>
    </aside>
  `;
}
