import type {
  LargestLeakReport,
  LeakCellReport,
  LeakMapReport,
  LeakReport,
} from '../documents/leak-report.ts';
import type { AskedOpeningReport, LinksReport } from '../documents/links-report.ts';
import { formatBoth } from '../documents/length-format.ts';
import { lengthBothWithPlusMinus } from '../documents/length-plus-minus.ts';
import type { PadChangeReport } from '../documents/pad-change-report.ts';
import type { FittedPadReport, PadFitReport, PadFitsReport } from '../documents/pad-fit-report.ts';
import type { RegulationReport } from '../documents/regulation-report.ts';
import type { BudgetReport } from '../documents/uncertainty-report.ts';
import { columns, signed } from './tables.ts';

const both = (mm: number): string => formatBoth(mm, 'mm');
const sure = (mm: number, { plusMinus }: BudgetReport): string =>
  lengthBothWithPlusMinus(mm, plusMinus, 'mm').replaceAll('\u00a0', ' ');
const fine = (mm: number): string => `${mm.toFixed(3)} mm`;
/** To two digits, empty where not known, no minus in front of a zero. */
const hundredths = (value: number | null): string =>
  value === null ? '' : Math.abs(value) < 0.005 ? '0.00' : value.toFixed(2).replace('-', '−');
const warned = (warnings: readonly string[]): string[] => warnings.map((w) => `! ${w}`);

const STIFF = 'Pads and arms are taken as stiff: leather that gives under the finger hides a part of a leak.';

/** A leak study: the note it hurts most, then every note it touches, the most hurt first. */
export function leakText({ notes, worst, warnings }: LeakReport): string {
  if (worst === null) return 'No note shuts the pad by this way: nothing is lost.';
  const sorted = [...notes].sort((a, b) => (b.lostDb ?? Infinity) - (a.lostDb ?? Infinity));
  const [most] = sorted;
  const lost = most.lostDb === null ? 'is lost' : `loses ${most.lostDb.toFixed(1)} dB`;
  const rows = sorted.map((note) => [
    note.fingering,
    note.lostDb === null ? 'lost' : note.lostDb.toFixed(2),
    note.changeCents === null ? '' : signed(note.changeCents),
    note.riseChangeMs === null ? '' : signed(note.riseChangeMs),
    note.pads.map(({ pad, gapMm }) => `${pad} ${gapMm.toFixed(3)}`).join(', '),
  ]);
  return [
    `${worst} suffers most: it ${lost}. ${notes.length} fingerings shut what leaks.`,
    '',
    ...columns([['note', 'lost dB', 'cents', 'rise ms', 'gaps mm'], ...rows]),
    '',
    ...warned(warnings),
    STIFF,
  ].join('\n');
}

/** The largest leak a note bears, as a sentence. */
export function largestLeakText(report: LargestLeakReport): string {
  const { fingering, lostDb, gapMm, papers, reason } = report;
  if (gapMm === null || papers === null) return `No such gap: ${reason ?? 'none was found'}.`;
  return [
    `${fingering} loses ${lostDb} dB at a gap of ${fine(gapMm)}, ${papers.toFixed(1)} papers.`,
    STIFF,
  ].join('\n');
}

/** A leak map: per place the note it hurts most and how many notes it touches. */
export function leakMapText({ gapMm, fingerings, rows }: LeakMapReport): string {
  const lost = (cell: LeakCellReport | null): number =>
    cell === null ? -Infinity : cell.lost ? Infinity : cell.lostDb!;
  const table = rows.map(({ pad, by, worst, cells }) => {
    const touched = cells.filter((c) => c !== null);
    const most = Math.max(...cells.map(lost));
    return [
      by === null ? pad : `${by} > ${pad}`,
      String(touched.length),
      worst ?? '',
      worst === null ? '' : most === Infinity ? 'lost' : most.toFixed(2),
    ];
  });
  return [
    `A gap of ${fine(gapMm)} at every place in turn: a pad's whole ring, or the driven pad's front; ${fingerings.length} fingerings.`,
    '',
    ...columns([['place', 'notes', 'worst', 'lost dB'], ...table]),
    '',
    STIFF,
  ].join('\n');
}

/** A length with its ±; empty where it is not known. */
const known = (mm: number | null, budget: BudgetReport | null): string =>
  mm === null ? '' : `${mm.toFixed(2)}${budget === null ? '' : ` ± ${budget.plusMinus.toFixed(2)}`}`;

/** Links: what rules and what is lost, then what shuts together. */
export function linksText({ horn, setup, pads, links, together }: LinksReport): string {
  const held = pads.filter((p) => p.ruledBy !== null);
  const sentence =
    held.length === 0
      ? 'No link holds a pad down: every pad stands at its own stop.'
      : held
          .map(
            (p) =>
              `${p.pad} stands at ${both(p.standsFrontMm)}: ${p.ruledBy!} holds it below its own ${both(p.ownFrontMm)}.`,
          )
          .join(' ');
  const rows = links.map((l) => [
    `${l.driver} > ${l.driven}`,
    l.travelRatio === null ? 'not known' : l.travelRatio.toFixed(3),
    known(l.allowsFrontMm, l.allowsBudget),
    l.rules ? 'rules' : '',
    known(l.lostAtFrontMm, l.lostAtFrontBudget),
    known(l.lostAtTouchMm, l.lostAtTouchBudget),
  ]);
  const head = ['link', 'ratio', 'allows mm', '', 'lost at front mm', 'at touch mm'];
  const left = together.flatMap((t) => [
    ...(t.driverLeftMm > 0 ? [`${t.driver} itself stays ${paper(t.driverLeftPapers)} open.`] : []),
    ...t.driven.flatMap((d) =>
      d.leftMm > 0 ? [`${t.driver} leaves ${d.pad} ${paper(d.leftPapers)} open at its front.`] : [],
    ),
  ]);
  return [
    `${horn}, ${setup}`,
    sentence,
    '',
    ...columns([head, ...rows]),
    '',
    ...(left.length === 0 ? ['Every driver shuts with what it drives, as the setup has it.'] : left),
  ].join('\n');
}

const paper = (papers: number): string => `${papers.toFixed(1)} papers`;

/** What an asked opening needs, as sentences. */
export function askedText({ pad, askedFrontMm, stops, ratios }: AskedOpeningReport): string {
  const raise = stops.filter((s) => s.raiseMm > 0);
  if (raise.length === 0) return `${pad} has ${both(askedFrontMm)} already.`;
  return [
    `For ${both(askedFrontMm)} at ${pad}:`,
    ...raise.map((s) => {
      const most = s.largestFrontMm !== null && s.neededFrontMm > s.largestFrontMm;
      const limit = most ? `, more than its hinge gives (${both(s.largestFrontMm!)})` : '';
      const needs = s.pad === pad ? both(s.neededFrontMm) : sure(s.neededFrontMm, s.neededBudget);
      return `  ${s.pad} must open ${needs}, ${sure(s.raiseMm, s.raiseBudget)} more${limit}.`;
    }),
    ...ratios.map(
      (r) =>
        `  Or ${r.driver} > ${r.driven} needs a ratio of ${r.neededRatio.toFixed(3)} ± ${r.neededBudget.plusMinus.toFixed(3)} instead of ${r.presentRatio.toFixed(3)}.`,
    ),
  ].join('\n');
}

/** Pads for cups: what fits, what does not, and the order list. */
export function padFitText({ horn, cups, order, notMeasured, caution }: PadFitsReport): string {
  const without = notMeasured.length === 0 ? [] : [`Cup floor not known: ${notMeasured.join(', ')}.`];
  if (cups.length === 0) return [`${horn}: no cup floor is known.`, ...without].join('\n');
  return [
    horn,
    ...cups.map(fitSentence),
    ...without,
    '',
    ...columns([
      ['pads', 'diameter mm', 'thickness mm', 'thousandths', 'for'],
      ...order.map((line) => [
        String(line.count),
        line.diameterMm.toFixed(1),
        line.thicknessMm.toFixed(2),
        line.thicknessThou.toFixed(0),
        line.pads.join(', '),
      ]),
    ]),
    '',
    caution,
  ].join('\n');
}

const padOf = ({ diameterMm, thicknessMm, thicknessThou }: FittedPadReport): string =>
  `${diameterMm.toFixed(1)} × ${thicknessMm.toFixed(2)} mm (${thicknessThou.toFixed(0)} thousandths)`;

function fitSentence(fit: PadFitReport): string {
  const floor = `${fit.pad}, cup floor ${fit.floorMm.toFixed(2)} mm${fit.floorFrom === 'derived' ? ' (derived)' : ''}`;
  if (fit.fits) {
    const batch = fit.wholeBatch ? '' : '; measure each pad, the batch is not all within the bed';
    return `${floor}: ${padOf(fit.choice)} on a bed of ${fit.choice.bedMm.toFixed(2)} mm${batch}.`;
  }
  const { leftOverMm, wantedMm } = fit;
  const side = leftOverMm > 0 ? 'too thick' : 'too thin';
  return `${floor}: nothing fits. Nearest ${padOf(fit.choice)}, ${Math.abs(leftOverMm).toFixed(2)} mm ${side}: it touches at the ${fit.touches} first and leaves ${fit.gapMm.toFixed(2)} mm. Wanted ${wantedMm!.from.toFixed(2)} to ${wantedMm!.to.toFixed(2)} mm.`;
}

/** Other pads: each key before and after, then the notes that change most. */
export function padChangeText({ horn, seating, pads, links, notes, warnings }: PadChangeReport): string {
  const share = (x: number): string => (100 * x).toFixed(1);
  const keys = pads.map((p) => [
    p.pad,
    p.thickerMm.toFixed(2),
    p.before.frontMm.toFixed(2),
    p.after.frontMm.toFixed(2),
    share(p.ventShareBefore),
    share(p.ventShareAfter),
    p.restored === null ? 'none' : p.restored.frontMm.toFixed(2),
    hundredths(p.restored?.thinnerCorkMm ?? null),
    `${p.droppedIn.touches} ${p.droppedIn.gapMm.toFixed(2)}`,
  ]);
  const moved = notes
    .filter((n) => n.changeCents !== null)
    .sort((a, b) => Math.abs(b.changeCents!) - Math.abs(a.changeCents!));
  const head = [
    'pad',
    'thicker mm',
    'front mm',
    'then',
    'vent %',
    'then',
    'restore to',
    'cork off',
    'dropped in',
  ];
  return [
    `${horn}: pads ${seating}, stops as they are.`,
    '',
    ...columns([head, ...keys]),
    '',
    ...columns([
      ['note', 'cents', 'dB'],
      ...moved.map((n) => [n.fingering, signed(n.changeCents!), hundredths(n.changeDb)]),
    ]),
    '',
    ...links.map(
      (l) =>
        `${l.driver} > ${l.driven} is put out by ${Math.abs(l.leftPapers).toFixed(1)} papers${l.leftMm < 0 ? ' at the driver' : ''}.`,
    ),
    ...warned(warnings),
  ].join('\n');
}

/** The order of work: what is done, then the list. */
export function orderText({ horn, done, moves, untested, warnings }: RegulationReport): string {
  return [
    horn,
    ...done.map((d) => `  ${d.within ? 'done' : 'not yet'}: ${d.id}, read ${fine(d.valueMm)}`),
    ...(moves.length === 0 ? [`Nothing ${untested.length === 0 ? '' : 'known '}is left to do.`] : []),
    ...[...moves, ...untested].map((move, i) => `${String(i + 1).padStart(3)}. ${move.sentence}`),
    ...warned(warnings),
  ].join('\n');
}
