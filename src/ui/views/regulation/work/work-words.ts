import { formatBoth, formatLength, type LengthUnit } from '../../../../documents/length-format.ts';
import { goesWords } from '../../../../documents/lost-motion-words.ts';
import { afterWords, type MoveReport } from '../../../../documents/regulation-report.ts';
import { fineLength } from '../pads/fine-lengths.ts';
import { fineLength as fineGap, gapWords, papersOf, papersWords } from '../gap-words.ts';

/** One move in words. */
export interface MoveWords {
  /** `Set the E key to 7.6 mm` */
  readonly what: string;
  /** what it is now, and how that is put right */
  readonly from: string;
  readonly test: string;
  readonly within: string;
}

/** What the words need besides the move. */
export interface MoveContext {
  readonly nameOf: (pad: string) => string;
  readonly unit: LengthUnit;
  /** `34.0 mm × 4.57 mm on 0.64 mm`, where a key gets another pad; null where it keeps its own */
  readonly newPad: (pad: string) => string | null;
  /** whether a link only holds shut what a spring shuts */
  readonly isHold: (driver: string, driven: string) => boolean;
}

/** A light shows less than the finest feeler measures, mm. */
const LIGHT_MM = 0.013;

const TESTS: Readonly<Record<MoveReport['test'], string>> = {
  'light all round, alone': 'light all round, the key alone',
  'light all round, its drivers’ arms backed off': 'light all round, its drivers’ arms backed off',
  'papers under both': 'a paper under each, pressed by the driver: both grip alike',
  'wedge at the front': 'wedge at the front, key at rest',
};

/** A link that nobody read: only its test is asked for. */
export function testWords(move: MoveReport, context: MoveContext): MoveWords {
  return {
    what: `Test this link: ${shutsWords(move, context)}`,
    from: 'never read; counts as shutting both at once',
    test: TESTS[move.test],
    within: `±${papersWords(papersOf(move.toleranceMm))}`,
  };
}

/** `D shuts F♯ auxiliary`, `F♯ auxiliary holds G♯ shut`. */
function shutsWords({ driver, pad }: MoveReport, { nameOf, isHold }: MoveContext): string {
  return `${nameOf(driver!)} ${isHold(driver!, pad) ? `holds ${nameOf(pad)} shut` : `shuts ${nameOf(pad)}`}`;
}

export function moveWords(move: MoveReport, context: MoveContext): MoveWords {
  const { nameOf, unit, newPad } = context;
  const test = TESTS[move.test];
  const pad = nameOf(move.pad);
  switch (move.kind) {
    case 'seat':
      return {
        what: newPad(move.pad) === null ? `Seat ${pad}` : `New pad for ${pad}, seated level`,
        from: newPad(move.pad) ?? seatFrom(move, unit),
        test,
        within: `no light; a feeler of ${fineGap(LIGHT_MM, unit)} must not pass`,
      };
    case 'link': {
      const driver = nameOf(move.driver!);
      return {
        what: `${move.again ? `Set${afterWords(move.after, nameOf)}` : 'Regulate'}: ${shutsWords(move, context)}${wantedGap(move, unit)}`,
        from: linkFrom(move, { driver, pad }, unit),
        test,
        within: `±${papersWords(papersOf(move.toleranceMm))}`,
      };
    }
    case 'height':
      return {
        what: `${raises(move) ? 'Raise' : 'Lower'} ${pad} to ${formatBoth(move.toMm, unit)}`,
        from: `${heightFrom(move, unit)}${newPad(move.pad) === null ? '' : ', reckoned for the new pad'}`,
        test,
        within: `±${formatLength(move.toleranceMm, unit)}`,
      };
  }
}

const raises = ({ fromMm, toMm }: MoveReport): boolean => fromMm !== null && toMm > fromMm;

function seatFrom({ fromMm }: MoveReport, unit: LengthUnit): string {
  return fromMm === null || !Number.isFinite(fromMm) ? 'leaks' : `${gapWords(fromMm, unit)} open`;
}

function wantedGap({ toMm }: MoveReport, unit: LengthUnit): string {
  if (toMm === 0) return ' with itself';
  return toMm > 0 ? `, left ${gapWords(toMm, unit)} open` : `, itself left ${gapWords(toMm, unit)} open`;
}

function linkFrom(
  { fromMm, again, lostMotion }: MoveReport,
  { driver, pad }: { readonly driver: string; readonly pad: string },
  unit: LengthUnit,
): string {
  if (lostMotion !== null)
    return `${goesWords([lostMotion], unit)}: its screw cannot take that up, see above`;
  if (fromMm === null) return again ? 'its heights move' : 'a pad is seated anew: read it again';
  return fromMm > 0
    ? `late: ${pad} hangs by ${gapWords(fromMm, unit)}`
    : `early: ${driver} is kept off by ${gapWords(fromMm, unit)}`;
}

function heightFrom({ fromMm, thinnerCorkMm }: MoveReport, unit: LengthUnit): string {
  const from = fromMm === null ? '' : `from ${formatLength(fromMm, unit)} at the front`;
  if (thinnerCorkMm === null) return from;
  return `${from}; foot cork ${fineLength(Math.abs(thinnerCorkMm), unit)} ${thinnerCorkMm > 0 ? 'thinner' : 'thicker'}`;
}

/** A value that came back, as its kind of move tells it. */
export function valueWords(kind: MoveReport['kind'], mm: number, unit: LengthUnit): string {
  if (kind === 'height') return `${formatBoth(mm, unit)} at the front`;
  if (mm === 0) return kind === 'seat' ? 'sealed' : 'both at once';
  return kind === 'link' && mm < 0 ? `${gapWords(mm, unit)} at the driver` : gapWords(mm, unit);
}
