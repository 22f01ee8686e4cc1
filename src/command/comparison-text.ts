import type { ComparisonReport, NoteDifferenceReport } from '../documents/comparison-report.ts';
import { tenths } from '../documents/tenths.ts';
import { columns, signed } from './tables.ts';

/** Setups side by side as sentences and two tables: what differs most first. */
export function comparisonText(report: ComparisonReport): string {
  return [
    ...report.sentences,
    '',
    ...columns([noteHead(report), ...report.notes.map(noteRow)]),
    '',
    ...columns([keyHead(report), ...report.keys.map(keyRow)]),
    '',
    ...report.warnings.map((w) => `! ${w}`),
    report.limits,
  ].join('\n');
}

const letter = (index: number): string => String.fromCharCode(65 + index);

function noteHead({ setups }: ComparisonReport): string[] {
  return [
    'note',
    ...setups.map((_, i) => `${letter(i)} cents`),
    ...setups.slice(1).flatMap((_, i) => [`${letter(i + 1)}−A cents`, `${letter(i + 1)}−A dB`, 'noticed by']),
  ];
}

function noteRow({ label, setups, differences }: ComparisonReport['notes'][number]): string[] {
  return [
    label,
    ...setups.map(({ cents, centsPlusMinus }) =>
      cents === null
        ? 'lost'
        : `${signed(cents)}${centsPlusMinus === null ? '' : ` ± ${tenths(centsPlusMinus)}`}`,
    ),
    ...differences.flatMap((difference) =>
      difference === null ? ['', '', ''] : differenceCells(difference),
    ),
  ];
}

function differenceCells(d: NoteDifferenceReport): string[] {
  return [
    `${signed(d.cents)} ± ${tenths(d.centsPlusMinus)}`,
    d.strengthDb === null || d.strengthDbPlusMinus === null
      ? ''
      : `${signed(d.strengthDb)} ± ${tenths(d.strengthDbPlusMinus)}`,
    d.noticedBy,
  ];
}

function keyHead({ setups }: ComparisonReport): string[] {
  return [
    'pad',
    ...setups.flatMap((_, i) => [
      `${letter(i)} front mm`,
      'of hole',
      `${letter(i)} as parallel mm`,
      `${letter(i)} vent share`,
    ]),
  ];
}

function keyRow({ number, name, setups }: ComparisonReport['keys'][number]): string[] {
  return [
    `${number} ${name}`,
    ...setups.flatMap((key) =>
      key === null
        ? ['none', '', '', '']
        : [
            `${key.frontMm.toFixed(1)} ± ${tenths(key.frontPlusMinusMm)}`,
            `${(100 * key.frontOfDiameter).toFixed(0)} %`,
            key.equivalentParallelMm.toFixed(1),
            `${(100 * key.ventShare).toFixed(0)} ± ${Math.max(1, Math.round(100 * key.ventSharePlusMinus))} %`,
          ],
    ),
  ];
}
