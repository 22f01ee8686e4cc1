import type { CSSResult } from 'lit';

/** Puts styles on the page's own tree, once each: there the drawing library has its styles too. */
export function adoptStyles(...styles: readonly CSSResult[]): void {
  for (const { styleSheet } of styles) {
    if (styleSheet && !document.adoptedStyleSheets.includes(styleSheet)) {
      document.adoptedStyleSheets.push(styleSheet);
    }
  }
}
