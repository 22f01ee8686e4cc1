import { html, nothing, type TemplateResult } from 'lit';
import type { NoteBlock, NoteSpan } from './note-blocks.model.ts';

/** The pieces of a note. @param pictures where drawings are, by the file’s name */
export function noteBlocks(
  blocks: readonly NoteBlock[],
  pictures: ReadonlyMap<string, string>,
): TemplateResult[] {
  return blocks.map((block) => noteBlock(block, pictures));
}

function noteBlock(block: NoteBlock, pictures: ReadonlyMap<string, string>): TemplateResult {
  const spans = (list: readonly NoteSpan[]): (TemplateResult | string)[] =>
    list.map((span) => noteSpan(span, pictures));
  switch (block.kind) {
    case 'heading': {
      const words = spans(block.spans);
      if (block.level === 1) return html`<h1 id=${block.id} tabindex="-1">${words}</h1>`;
      if (block.level === 2) return html`<h2 id=${block.id} tabindex="-1">${words}</h2>`;
      return html`<h3 id=${block.id} tabindex="-1">${words}</h3>`;
    }
    case 'paragraph':
      return html`<p>${spans(block.spans)}</p>`;
    case 'list': {
      const items = block.items.map((item) => html`<li>${noteItem(item, pictures)}</li>`);
      return block.ordered
        ? html`<ol>
            ${items}
          </ol>`
        : html`<ul>
            ${items}
          </ul>`;
    }
    case 'table':
      return html`
        <div class="nt-scrolls" role="group" aria-label="Table" tabindex="0">
          <table>
            <thead>
              <tr>
                ${block.head.map((cell) => (cell.length === 0 ? html`<td></td>` : html`<th scope="col">${spans(cell)}</th>`))}
              </tr>
            </thead>
            <tbody>
              ${block.rows.map(
                (row) =>
                  html`<tr>
                    ${row.map((cell) => html`<td>${spans(cell)}</td>`)}
                  </tr>`,
              )}
            </tbody>
          </table>
        </div>
      `;
    case 'code':
      return html`<pre class="nt-scrolls" role="group" aria-label="Formula" tabindex="0">${block.text}</pre>`;
    case 'quote':
      return html`<blockquote>${noteBlocks(block.blocks, pictures)}</blockquote>`;
  }
}

/** What is a single line stands in its bullet without room around it. */
function noteItem(
  item: readonly NoteBlock[],
  pictures: ReadonlyMap<string, string>,
): (TemplateResult | string)[] {
  const [first, ...rest] = item;
  if (first?.kind !== 'paragraph') return noteBlocks(item, pictures);
  return [...first.spans.map((span) => noteSpan(span, pictures)), ...noteBlocks(rest, pictures)];
}

function noteSpan(span: NoteSpan, pictures: ReadonlyMap<string, string>): TemplateResult | string {
  const inner = (list: readonly NoteSpan[]): (TemplateResult | string)[] =>
    list.map((s) => noteSpan(s, pictures));
  switch (span.kind) {
    case 'text':
      return span.text;
    case 'code':
      return html`<code>${span.text}</code>`;
    case 'strong':
      return html`<strong>${inner(span.spans)}</strong>`;
    case 'stressed':
      return html`<em>${inner(span.spans)}</em>`;
    case 'link':
      return html`<a
        href=${span.link.href}
        target=${span.link.outside ? '_blank' : nothing}
        rel=${span.link.outside ? 'noopener' : nothing}
        >${inner(span.spans)}</a
      >`;
    case 'picture': {
      const address = pictures.get(span.file);
      return address === undefined
        ? span.said
        : html`<span class="nt-scrolls nt-picture" role="group" aria-label="Drawing" tabindex="0"
            ><img src=${address} alt=${span.said} decoding="async"
          /></span>`;
    }
  }
}
