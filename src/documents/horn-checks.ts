import { makePadPose } from '../acoustics/index.ts';
import { isWhole } from './complete-setup.ts';
import type { HornDocument } from './horn-document.ts';
import type { SetupDocument, WholeKeySetup } from './setup-document.ts';
import type { DocumentIssue } from './schema-parts.ts';

/** What a schema cannot see: order, references, and geometry that contradicts itself. */
export function hornIssues(document: HornDocument): DocumentIssue[] {
  const issues: DocumentIssue[] = [];
  const add = (path: string, code: string, message: string): void => {
    issues.push({ path, code, message });
  };
  let last = 0;
  document.bore.forEach((section, i) =>
    section.points.forEach((point, j) => {
      if (point.positionMm < last) {
        add(
          `bore[${i}].points[${j}].positionMm`,
          'order',
          `invalid position: ${point.positionMm} mm; expected ${last} mm or more, as the bore runs on`,
        );
      }
      last = Math.max(last, point.positionMm);
    }),
  );
  const ids = new Set<string>();
  document.holes.forEach((hole, i) => {
    if (ids.has(hole.id)) add(`holes[${i}].id`, 'duplicate', `pad id "${hole.id}" is used twice`);
    ids.add(hole.id);
    if (hole.positionMm > last) {
      add(
        `holes[${i}].positionMm`,
        'range',
        `invalid position of pad ${hole.number}: ${hole.positionMm} mm; expected at most ${last} mm, where the bore ends`,
      );
    }
  });
  const known = (path: string, id: string): void => {
    if (!ids.has(id))
      add(path, 'reference', `unknown pad id "${id}"; expected one of ${[...ids].join(', ')}`);
  };
  const touches = new Set(document.touches.map((t) => t.id));
  document.touches.forEach((touch, i) => {
    touch.closes.forEach((id, j) => known(`touches[${i}].closes[${j}]`, id));
    touch.opens.forEach((opening, j) => {
      known(`touches[${i}].opens[${j}].pad`, opening.pad);
      for (const word of ['whileDown', 'whileUp'] as const) {
        const id = opening[word];
        if (id !== undefined && !touches.has(id)) {
          add(`touches[${i}].opens[${j}].${word}`, 'reference', `unknown touch "${id}"`);
        }
      }
    });
  });
  document.links.forEach((l, i) => {
    known(`links[${i}].driver`, l.driver);
    known(`links[${i}].driven`, l.driven);
  });
  return [...issues, ...linkLoops(document)];
}

/** Links that lead back to their own driver would never settle. */
function linkLoops(document: HornDocument): DocumentIssue[] {
  const drives = (from: string, seen: ReadonlySet<string>): boolean =>
    document.links.some(
      (l) => l.driver === from && (seen.has(l.driven) || drives(l.driven, new Set([...seen, l.driven]))),
    );
  const index = document.links.findIndex((l) => drives(l.driver, new Set([l.driver])));
  if (index < 0) return [];
  const { driver } = document.links[index];
  return [
    {
      path: `links[${index}]`,
      code: 'loop',
      message: `the links from pad "${driver}" lead back to a pad on their way; expected no loop`,
    },
  ];
}

/**
 * What is wrong between a setup and its horn, whether it is whole or sparse.
 *
 * @param prefix written before each path
 */
export function setupIssues(horn: HornDocument, setup: SetupDocument, prefix: string): DocumentIssue[] {
  const issues: DocumentIssue[] = [];
  const add = (path: string, code: string, message: string): void => {
    issues.push({ path: `${prefix}${path}`, code, message });
  };
  const seen = new Set<string>();
  setup.keys.forEach((entry, i) => {
    const path = `keys[${i}]`;
    const hole = horn.holes.find((h) => h.id === entry.pad);
    if (hole === undefined || hole.key === null) {
      add(`${path}.pad`, 'reference', `unknown pad id "${entry.pad}" in the setup`);
      return;
    }
    if (seen.has(entry.pad)) {
      add(`${path}.pad`, 'duplicate', `pad "${entry.pad}" is set twice in the setup`);
    }
    seen.add(entry.pad);
    if ((entry.openingMm === undefined) !== (entry.measuredAt === undefined)) {
      add(
        `${path}.measuredAt`,
        'missing',
        `pad ${hole.number}: an opening means nothing without its measuring point; expected both or neither`,
      );
    }
    if (entry.padDiameterMm !== undefined && !(entry.padDiameterMm > hole.diameterMm)) {
      add(
        `${path}.padDiameterMm`,
        'range',
        `invalid pad diameter of pad ${hole.number}: ${entry.padDiameterMm} mm; expected more than its hole, ${hole.diameterMm} mm`,
      );
    }
    if (!isWhole(entry)) return;
    const problem = poseProblem(hole.key, entry);
    if (problem !== null) add(`${path}.openingMm`, 'range', `pad ${hole.number}: ${problem}`);
  });
  const ids = new Set(horn.holes.map((h) => h.id));
  setup.links?.forEach((link, i) => {
    for (const end of ['driver', 'driven'] as const) {
      if (!ids.has(link[end])) {
        add(`links[${i}].${end}`, 'reference', `unknown pad id "${link[end]}" in the setup’s links`);
      }
    }
  });
  return issues;
}

/** What a setup leaves unsaid that sound needs: one issue a key. */
export function missingIssues(horn: HornDocument, setup: SetupDocument, prefix: string): DocumentIssue[] {
  return horn.holes.flatMap((hole) => {
    if (hole.key === null) return [];
    const entry = setup.keys.find((k) => k.pad === hole.id);
    if (entry !== undefined && isWhole(entry)) return [];
    const lacks =
      entry === undefined || entry.openingMm === undefined
        ? 'opening'
        : entry.padDiameterMm === undefined
          ? 'pad diameter'
          : 'pad thickness';
    return [
      {
        path: `${prefix}keys`,
        code: 'missing',
        message: `the setup has no ${lacks} for pad ${hole.number} (${hole.id})`,
      },
    ];
  });
}

/** Why a key cannot stand as measured, or null if it can. */
function poseProblem(key: { hingeMm: number; hingeHeightMm: number }, entry: WholeKeySetup): string | null {
  try {
    makePadPose(
      { distance: key.hingeMm / 1000, height: key.hingeHeightMm / 1000 },
      entry.padDiameterMm / 2000,
      { at: entry.measuredAt, height: entry.openingMm / 1000 },
    );
    return null;
  } catch (error) {
    if (error instanceof RangeError) return error.message;
    throw error;
  }
}
