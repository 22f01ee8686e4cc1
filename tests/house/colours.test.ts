import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const ROOT = new URL('../../', import.meta.url).pathname;
const read = (file: string): string => readFileSync(join(ROOT, file), 'utf8');
const FILES = readdirSync(join(ROOT, 'src/ui'), { recursive: true, encoding: 'utf8' })
  .filter((file) => /\.(ts|css)$/.test(file))
  .map((file) => join('src/ui', file));

/** Hex digits or a colour function with numbers in it; a link to a view such as `#add` is a word in quotes after `href`. */
const LITERAL =
  /(?<!href=")(?<![\w&/])#(?:[0-9a-f]{8}|[0-9a-f]{6}|[0-9a-f]{3,4})\b(?!')|\b(?:rgba?|hsla?|oklch|oklab|lab|lch)\(\s*[\d.]/gi;
const QUOTED = /'#(?:[0-9a-f]{8}|[0-9a-f]{6}|[0-9a-f]{3})'/gi;

describe('colours', () => {
  it('are written in the tokens and nowhere else', () => {
    const literal = FILES.filter((file) => !file.endsWith('tokens.css')).flatMap((file) =>
      [...read(file).matchAll(LITERAL), ...read(file).matchAll(QUOTED)].map(([text]) => `${file}: ${text}`),
    );
    expect(literal).toEqual([]);
  });

  it('are found where somebody writes one', () => {
    for (const text of ['color: #fff;', "ink: '#14262b'", 'rgb(8 66 110)', 'rgba(0,0,0,0)']) {
      expect([text, [...text.matchAll(LITERAL), ...text.matchAll(QUOTED)].length > 0]).toEqual([text, true]);
    }
  });

  it('that are used have a token, and every token is used', () => {
    const known = new Set([...read('src/ui/tokens.css').matchAll(/(--vw-[\w-]+):/g)].map(([, name]) => name));
    const text = FILES.map(read).join('\n');
    const own = new Set([...text.matchAll(/(--vw-[\w-]+):/g)].map(([, name]) => name));
    const used = new Set([...text.matchAll(/var\((--vw-[\w-]+)/g)].map(([, name]) => name));
    // A token with a value of its own beside the use may stay away.
    const optional = new Set([...text.matchAll(/var\((--vw-[\w-]+),/g)].map(([, name]) => name));
    expect([...used].filter((name) => !own.has(name) && !optional.has(name))).toEqual([]);
    // Charts read some by name, and depths of a hue by number.
    const isRead = (name: string): boolean =>
      used.has(name) || text.includes(`'${name}'`) || /--vw-(line|rise|fall)-\d$/.test(name);
    expect([...known].filter((name) => !isRead(name))).toEqual([]);
  });
});
