import { html, type TemplateResult } from 'lit';
import { live } from 'lit/directives/live.js';
import '../parts/vw-bench-field.ts';
import type { Bench } from '../shell/bench.ts';
import { ALL_KEYS, type WishEntry } from './wish-entry.model.ts';

/** Which key the player’s wish is about and how far open they want it, or how much lower or higher all keys. */
export function wishEntry(wish: WishEntry, { playerSheet }: Bench): TemplateResult {
  return html`
    <div class="ps-wish-entry" @focusin=${() => playerSheet.expectTyping()}>
      <label for="ps-wish-key">The wish is about</label>
      <select
        id="ps-wish-key"
        data-act="wish-key"
        .value=${live(wish.key)}
        @change=${(e: Event) => {
          const { value } = e.target as HTMLSelectElement;
          if (value === ALL_KEYS) playerSheet.wishForAll();
          else playerSheet.wishKey(value === '' ? null : value);
        }}
      >
        <option value="" ?selected=${wish.key === ''}>no key named</option>
        <option value=${ALL_KEYS} ?selected=${wish.key === ALL_KEYS}>all keys at once</option>
        ${wish.keys.map(
          ({ id, label }) => html`<option value=${id} ?selected=${id === wish.key}>${label} key</option>`,
        )}
      </select>
      <vw-bench-field
        data-field="wish-opening"
        .label=${wish.label}
        hint=""
        .text=${wish.text}
        .echo=${wish.echo}
        .problem=${wish.problem}
        ?hidden=${!wish.isNamed}
        @vw-field-change=${(e: CustomEvent<{ text: string }>) => void playerSheet.typeWish(e.detail.text)}
        @vw-field-restore=${() => playerSheet.restoreWish()}
      ></vw-bench-field>
    </div>
  `;
}
