/**
 * Lays out what contributors add most often: a view of the bench, or a model of the pad over a hole. What is laid out
 * runs, shows the horn in hand or computes a thin slit, and passes every test; what it should do is then written in.
 */

/** Texts to write, by path from the root; a line put into a file that is there is given with the whole file. */
export type LaidOut = ReadonlyMap<string, string>;

/** Reads a file of the project. */
export type ReadFile = (path: string) => string;

const KINDS = ['view', 'hole-model'] as const;
export type Kind = (typeof KINDS)[number];

/**
 * Lays out one new thing.
 *
 * @param name kebab-case, as the file is to be called
 * @throws RangeError for an unknown kind, or a name that is not kebab-case or is taken
 */
export function layOut(kind: string, name: string, read: ReadFile): LaidOut {
  if (!/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(name)) {
    throw new RangeError(
      `invalid name: "${name}"; expected small letters, digits and hyphens, as in low-notes`,
    );
  }
  if (kind === 'view') return layOutView(name, read);
  if (kind === 'hole-model') return layOutHoleModel(name, read);
  throw new RangeError(`invalid kind: "${kind}"; expected one of ${KINDS.join(', ')}`);
}

const camel = (name: string): string => name.replace(/-(.)/g, (_, c: string) => c.toUpperCase());
const pascal = (name: string): string => camel(`-${name}`);
const words = (name: string): string => {
  const spaced = name.replaceAll('-', ' ');
  return spaced[0].toUpperCase() + spaced.slice(1);
};

/** A file with one text after another; the other must be there once. */
function after(text: string, anchor: string, added: string): string {
  const at = text.indexOf(anchor);
  if (at < 0) throw new RangeError(`invalid file: "${anchor.trim()}" is not in it; expected it once`);
  return text.slice(0, at + anchor.length) + added + text.slice(at + anchor.length);
}

/** A file with one text before the last of another. */
function beforeLast(text: string, anchor: string, added: string): string {
  const at = text.lastIndexOf(anchor);
  if (at < 0) throw new RangeError(`invalid file: "${anchor.trim()}" is not in it; expected it`);
  return text.slice(0, at) + added + text.slice(at);
}

function layOutView(name: string, read: ReadFile): LaidOut {
  const names = read('src/ui/state/view-names.ts');
  if (names.includes(`'${name}'`)) throw new RangeError(`invalid name: "${name}" is taken by a view`);
  const folder = `src/ui/views/${name}`;
  const model = `make${pascal(name)}View`;
  const type = `${pascal(name)}View`;
  const prefix = name
    .split('-')
    .map((part) => part[0])
    .join('');
  const css = `v${prefix}`;
  return new Map([
    ['src/ui/state/view-names.ts', after(names, 'export const VIEW_NAMES = [\n', `  '${name}',\n`)],
    [
      'src/ui/views/workbench/views.ts',
      beforeLast(
        read('src/ui/views/workbench/views.ts'),
        '];',
        `  {
    name: '${name}',
    label: null,
    title: 'Ventwright: ${words(name).toLowerCase()}',
    load: () => import('../${name}/${name}-view.ts'),
    show: (bench) => html\`<vw-${name}-view .bench=\${bench}></vw-${name}-view>\`,
  },
`,
      ),
    ],
    [
      'tests/browser/built-site.ts',
      after(
        read('tests/browser/built-site.ts'),
        'const WAITS: Readonly<Record<ViewName, (page: Page) => Promise<void>>> = {\n',
        `  '${name}': async (page) => void (await page.waitForSelector('.${css}-page')),\n`,
      ),
    ],
    [
      `${folder}/${name}-view.model.ts`,
      `import { hornInHand, type BenchState } from '../../state/bench-state.ts';

/** What the view says, as plain text. */
export interface ${type} {
  readonly headline: string;
}

/** What the view says of the bench. */
export function ${model}(state: BenchState): ${type} {
  return { headline: hornInHand(state).contents.horn.document.name };
}
`,
    ],
    [
      `${folder}/${name}-view.styles.ts`,
      `import { css } from 'lit';

export const ${camel(name)}Styles = css\`
  .${css}-page {
    max-width: 60rem;
    margin: 0 auto;
    padding: 1rem;
  }
\`;
`,
    ],
    [
      `${folder}/${name}-view.ts`,
      `import { html, type TemplateResult } from 'lit';
import { customElement } from 'lit/decorators.js';
import { hornInHand, type BenchState } from '../../state/bench-state.ts';
import { BenchView } from '../bench-view.ts';
import { ${model} } from './${name}-view.model.ts';
import { ${camel(name)}Styles } from './${name}-view.styles.ts';

/** ${words(name)}. */
@customElement('vw-${name}-view')
export class Vw${pascal(name)}View extends BenchView {
  protected override readonly pageStyles = [${camel(name)}Styles];

  protected override drawnFrom(state: BenchState): readonly unknown[] {
    return [hornInHand(state).contents];
  }

  override render(): TemplateResult {
    const { bench } = this;
    if (bench === null) return html\`\`;
    const view = ${model}(bench.store.get());
    return html\`
      <main class="${css}-page">
        <h1>\${view.headline}</h1>
      </main>
    \`;
  }
}

declare global {
  interface HTMLElementTagNameMap {
    'vw-${name}-view': Vw${pascal(name)}View;
  }
}
`,
    ],
    [
      `tests/ui/${name}-view.model.test.ts`,
      `import { expect, it } from 'vitest';
import { makeBenchState } from '../../src/ui/state/bench-state.ts';
import { ${model} } from '../../src/ui/views/${name}/${name}-view.model.ts';
import { onTheBench } from './demo.ts';

it('names the horn in hand', () => {
  const contents = onTheBench('alto');
  const state = makeBenchState([], contents);
  expect(${model}(state).headline).toBe(contents.horn.document.name);
});
`,
    ],
  ]);
}

function layOutHoleModel(name: string, read: ReadFile): LaidOut {
  const path = `src/acoustics/holes/pad-models/${name}.ts`;
  const index = read('src/acoustics/holes/pad-models/index.ts');
  if (index.includes(`'./${name}.ts'`)) throw new RangeError(`invalid name: "${name}" is taken by a model`);
  const listed = index.replace(/(PAD_MODELS: readonly PadModel\[\] = \[[^\]]*)\]/, `$1, ${camel(name)}]`);
  if (listed === index)
    throw new RangeError('invalid file: PAD_MODELS is not in the index; expected it once');
  return new Map([
    [
      'src/acoustics/holes/pad-models/index.ts',
      after(
        listed,
        "import type { PadModel } from './pad-model.ts';\n",
        `import { ${camel(name)} } from './${name}.ts';\n`,
      ),
    ],
    [
      path,
      `import { flangedEndLength } from '../../bore/open-end.ts';
import { dual, lnOf, over, plus, times, type Dual } from '../../numerics/dual.ts';
import { makePadEnd, type MovingPad, type PadEnd, type PadLengths, type PadModel, type PadOverHole } from './pad-model.ts';

/**
 * ${words(name)}: laid out as a thin slit under the rim in series with the open hole's end,
 *
 *   length = 0.82·b + b² ln((b + w)/b)/(2h)
 *
 * **Source:** ours, to be replaced by the model's own.
 * **Holds for:** openings much smaller than the hole; to be replaced by the model's own range.
 */
export const ${camel(name)}: PadModel = Object.freeze({
  id: '${name}',
  name: '${words(name)}',
  source: 'ours, as laid out',
  relativeError: 0.5,
  endOf,
});

function endOf(pad: PadOverHole): PadEnd {
  return makePadEnd(pad, lengthsOf, {
    equivalentParallel: () => pad.centreHeight,
    warnings: () => ['This model has been laid out and not yet written.'],
  });
}

function lengthsOf(pad: MovingPad): PadLengths<Dual> {
  const b = pad.holeRadius;
  const noPadLength = times(b, dual(flangedEndLength(1, Infinity)));
  if (pad.centreHeight.value === Infinity) return { length: noPadLength, noPadLength, gapShare: dual(0) };
  const wide = lnOf(over(plus(b, pad.rimThickness), b));
  const slit = over(times(times(b, b), wide), times(dual(2), pad.centreHeight));
  return { length: plus(noPadLength, slit), noPadLength, gapShare: slit };
}
`,
    ],
  ]);
}
