/**
 * Why a figure on the screen is what it is: for every kind of figure the words that say what it is, its formula in
 * words, whose it is, how far it holds and where it is written down. The inputs of one figure come with it.
 */
import type { BudgetReport } from '../../documents/uncertainty-report.ts';

/** Every kind of figure that opens its reason. */
export const REASON_KINDS = [
  'opening',
  'plus-minus',
  'equivalent-opening',
  'vent-share',
  'diminishing-return',
  'pitch',
  'change',
  'strength',
  'rise-time',
  'cutoff',
  'height-gain',
  'leak-loss',
  'leak-gap',
  'link-limit',
  'asked-opening',
  'lost-motion',
  'shut-together',
  'pad-choice',
  'pad-change',
  'difference',
  'calibration',
  'proposal-gain',
] as const;
export type ReasonKind = (typeof REASON_KINDS)[number];

/** What is true of every figure of a kind. */
export interface ReasonGround {
  readonly title: string;
  /** entries of the glossary that say what it is */
  readonly words: readonly string[];
  /** how it is worked out, in words */
  readonly formula: string;
  /** short names in the list of sources; what is not listed is ours */
  readonly sources: readonly string[];
  /** whether a definition or a derivation of our own is in it */
  readonly isOurs: boolean;
  readonly holdsFor: string;
  /** the note that has it, and its heading */
  readonly note: { readonly name: string; readonly heading: string };
}

/** One number a figure was worked out from. */
export interface ReasonInput {
  readonly label: string;
  /** with its unit and, where it is known, its ± */
  readonly value: string;
  /** where it comes from: `with a caliper`, `from the example`; empty where there is nothing to say */
  readonly from: string;
}

/** The unit the parts of a ± are told in. */
export type ReasonUnit = 'mm' | 'cents' | 'share' | 'dB';

/** The reason of one figure on the screen. */
export interface Reason {
  readonly kind: ReasonKind;
  /** as it stands on the screen */
  readonly figure: string;
  /** whose it is: `E key, as found` */
  readonly of: string;
  readonly inputs: readonly ReasonInput[];
  /** what its ± is made of; null where it has none, or none that is known */
  readonly budget: { readonly parts: BudgetReport; readonly in: ReasonUnit } | null;
  /** what else is to be said of this one figure: what decided it, why its ± is not known */
  readonly remarks: readonly string[];
}

/** How far the flow under a pad is known. */
const PAD_RANGE =
  'A pad of 1.03 to 1.5 times the hole’s radius, open by 0.03 to 2 hole radii at its centre, under waves much longer than the hole is wide. Outside, it goes on smoothly and a warning says so.';

/** What a plane-wave horn is good for. */
const HORN_RANGE =
  'Alone, ±10 cents at best: waves in the bore are taken as plane, the bell as short cones. The difference between two openings of one horn is far better.';

/** What leads a note from the bench to its pitch. */
const HORN_SOURCES = [
  'Keefe 1984',
  'Keefe 1990',
  'Lefebvre & Scavone 2012',
  'Silva et al. 2009',
  'Lefebvre 2010',
];

const LINK_RANGE =
  'Stiff arms and links without play. Where notes are played, the papers a screw adds are left out of how pads stand.';

/** The ground of every kind. */
export const REASON_GROUNDS: Readonly<Record<ReasonKind, ReasonGround>> = {
  opening: {
    title: 'Opening',
    words: ['opening', 'back, centre, front'],
    formula:
      'Read between the pad’s face and the rim. To another point of the pad it is carried by the hinge: about in proportion to the distance from the rod. Where an arm keeps the pad lower than its own stop, the arm’s ratio times its driver’s opening counts.',
    sources: ['common practice'],
    isOurs: true,
    holdsFor: 'A pad flat and parallel to its rim when shut, a rod parallel to the rim.',
    note: { name: 'hinged-pad', heading: 'The number' },
  },
  'plus-minus': {
    title: 'How sure',
    words: ['budget (of a ±)'],
    formula:
      'Each reading’s own ± times how steeply the answer follows that reading; the pad model’s 5 % of what a pad adds to its hole; all squared, added up, and the root taken.',
    sources: ['JCGM 100:2008', 'common practice'],
    isOurs: true,
    holdsFor:
      'Readings that err each on its own, by little enough that the same note or link goes on deciding.',
    note: { name: 'uncertainty', heading: 'The parts' },
  },
  'equivalent-opening': {
    title: 'Equivalent parallel opening',
    words: ['equivalent parallel opening', 'end length'],
    formula:
      'The height at which a pad parallel to its rim would load the hole as much as this swung one does. In the head: the opening at the centre, less a sixth of (pad radius ÷ rod distance)² of it.',
    sources: ['Dalmont, Nederveen & Joly 2001'],
    isOurs: true,
    holdsFor: `${PAD_RANGE} The rule in the head is within 9 % for usual keys.`,
    note: { name: 'hinged-pad', heading: 'The simple rule' },
  },
  'vent-share': {
    title: 'Vent share',
    words: ['vent share'],
    formula:
      'The hole’s acoustic length with no pad, divided by its length with the pad where it stands. Its length is what the bore adds, the chimney, and everything beyond the rim.',
    sources: ['Lefebvre & Scavone 2012', 'Nederveen et al. 1998', 'Dalmont, Nederveen & Joly 2001'],
    isOurs: true,
    holdsFor: PAD_RANGE,
    note: { name: 'venting-study', heading: 'Vent share, from what' },
  },
  'diminishing-return': {
    title: 'Where more height stops helping',
    words: ['point of diminishing return', 'governs'],
    formula:
      'Looked for from above: the highest step that still buys something, note by note and in vent share. Halving that step over and over then ends within 0.005 mm.',
    sources: [],
    isOurs: true,
    holdsFor: `The other pads as they stand. ${PAD_RANGE}`,
    note: { name: 'venting-study', heading: 'The venting study: definitions' },
  },
  pitch: {
    title: 'Pitch of a note',
    words: ['pitch (of a note)'],
    formula:
      'Bore, holes and pads are walked from the bell to the mouthpiece. The note sounds where, at its tip and with the reed counted in, the flow swings in step with the pressure, neither ahead nor behind. 1200 times the logarithm to base 2 of that frequency over equal temperament’s.',
    sources: HORN_SOURCES,
    isOurs: false,
    holdsFor: HORN_RANGE,
    note: { name: 'chain', heading: 'Pitch, from what' },
  },
  change: {
    title: 'Change of a note',
    words: ['change (of a note)'],
    formula:
      'The note’s pitch with the one opening less its pitch with the other: 1200 times the logarithm to base 2 of the one frequency over the other. What both have in common, the bore’s model before all, falls out.',
    sources: HORN_SOURCES,
    isOurs: false,
    holdsFor: `The other pads as they stand, links followed. ${PAD_RANGE}`,
    note: { name: 'chain', heading: 'Change, from what' },
  },
  strength: {
    title: 'Strength of a note',
    words: ['strength', 'height (of a resonance)'],
    formula:
      'How high the input impedance peaks at the note’s resonance. A note that peaks higher answers more readily; it is no measure of loudness in the room.',
    sources: ['Keefe 1984', 'Pierce', 'Lefebvre, Scavone & Kergomard 2013'],
    isOurs: true,
    holdsFor:
      'Soft playing, one open hole not hearing the next: that costs 4 to 19 % of height in a cone like a saxophone’s.',
    note: { name: 'whole-horn', heading: 'Open holes that hear each other' },
  },
  'rise-time': {
    title: 'Rise time',
    words: ['rise time'],
    formula: 'The sharpness Q of the resonance, divided by π times its frequency.',
    sources: ['Keefe 1984', 'Pierce'],
    isOurs: false,
    holdsFor: 'The air column alone; reed and player add their own.',
    note: { name: 'chain', heading: 'From bench measurements to a note' },
  },
  cutoff: {
    title: 'Cutoff',
    words: ['cutoff'],
    formula:
      'Speed of sound over 2π, times the root of an open hole’s area over its acoustic length and the bore’s volume that belongs to it; of the first three open holes the geometric mean.',
    sources: ['Moers & Kergomard 2011'],
    isOurs: false,
    holdsFor: 'Rows of open holes much alike; taken here from three cells, it is an estimate.',
    note: { name: 'whole-horn', heading: 'The cutoff of the open holes' },
  },
  'height-gain': {
    title: 'What a key’s height can still bring',
    words: ['height (of a resonance)', 'point of diminishing return'],
    formula:
      'The note is played with the key as it stands and with the key at enough; 20 times the decimal logarithm of the one resonance’s height over the other’s.',
    sources: HORN_SOURCES,
    isOurs: true,
    holdsFor: `Soft playing, the other pads as they stand. ${PAD_RANGE}`,
    note: { name: 'regulation', heading: 'Height beside leak' },
  },
  'leak-loss': {
    title: 'What a leak costs',
    words: ['lost height', 'gap'],
    formula:
      'The note is played with the pad sealed and with the gap; 20 times the decimal logarithm of the one resonance’s height over the other’s. What a gap lets through goes with its third power.',
    sources: ['Zwikker & Kosten 1949', 'Abramowitz & Stegun 1964'],
    isOurs: true,
    holdsFor:
      'Gaps to a tenth of the hole’s radius. Leather that gives under the finger and a seat pressed into the pad make real leaks smaller. Losing 3 dB as a limit is our convention.',
    note: { name: 'regulation', heading: 'Leaks' },
  },
  'leak-gap': {
    title: 'How wide a leak may be',
    words: ['gap', 'paper'],
    formula:
      'The gap is widened until the note has lost what is asked, each time playing it with the gap and without.',
    sources: ['Zwikker & Kosten 1949', 'common practice'],
    isOurs: true,
    holdsFor:
      'Gaps to a tenth of the hole’s radius, all round the rim or hanging by a link. Losing 3 dB as a limit is our convention.',
    note: { name: 'regulation', heading: 'Which notes a link spoils' },
  },
  'link-limit': {
    title: 'What a link lets a pad open',
    words: ['holds down'],
    formula:
      'Travel ratio times the driver’s front opening, and what the link’s screw leaves. The tightest arm or the pad’s own stop rules.',
    sources: ['common practice'],
    isOurs: true,
    holdsFor: LINK_RANGE,
    note: { name: 'regulation', heading: 'Links that hold a pad down' },
  },
  'asked-opening': {
    title: 'What an opening asked of a pad needs',
    words: ['holds down'],
    formula:
      'The opening asked, less what a late link’s screw leaves, divided by the travel ratio, is what its driver needs at its front; that driver’s drivers need theirs in turn, the most where several ask. What a stop lacks is that less its own opening.',
    sources: ['common practice'],
    isOurs: true,
    holdsFor: LINK_RANGE,
    note: { name: 'regulation', heading: 'Links that hold a pad down' },
  },
  'lost-motion': {
    title: 'Lost motion',
    words: ['lost motion'],
    formula:
      'What the arm allows, less what the driven pad stands open, divided by the travel ratio; at the touch, that times the touch’s travel per travel at the front.',
    sources: ['common practice'],
    isOurs: true,
    holdsFor: `${LINK_RANGE} Felt from about 0.3 mm at the touch, as the trade has it.`,
    note: { name: 'regulation', heading: 'Links that hold a pad down' },
  },
  'shut-together': {
    title: 'What is left when a link shuts',
    words: ['early, late (of a link)', 'paper'],
    formula:
      'With the driver home: what the link’s screw leaves under the driven pad, or under the driver where the driven pad is first; one paper is 0.025 mm.',
    sources: ['common practice'],
    isOurs: true,
    holdsFor: 'Screws as they were read with feelers; leather that gives closes a little more.',
    note: { name: 'regulation', heading: 'Which notes a link spoils' },
  },
  'pad-choice': {
    title: 'Pad and bed for a cup',
    words: ['cup floor', 'bed', 'seat'],
    formula:
      'Pad thickness and bed, less the depth of the seat, fill the cup from its floor to the rim. Of the pads in the drawer whose bed stays in range, the thickest.',
    sources: ['common practice'],
    isOurs: true,
    holdsFor: 'A cup parallel to its rim when shut. Classes, batches and beds are yours to set.',
    note: { name: 'regulation', heading: 'Pads for cups' },
  },
  'pad-change': {
    title: 'A pad of another thickness',
    words: ['dropped in, levelled'],
    formula:
      'The foot cork stays, so the face sinks by what the pad gained; levelled, the front loses in proportion to its distance from the rod. The notes are then played before and after.',
    sources: ['common practice'],
    isOurs: true,
    holdsFor: `The same corks and screws. ${PAD_RANGE}`,
    note: { name: 'regulation', heading: 'A pad of another thickness' },
  },
  difference: {
    title: 'Difference of two setups',
    words: ['difference (of two setups)', 'budget (of a ±)'],
    formula:
      'The other setup’s number less the first’s. On one horn a reading taken once errs in both alike and all but falls out; on two horns each errs on its own.',
    sources: ['JCGM 100:2008', 'Lefebvre 2010', 'Hill & Summers 2007', 'Lefebvre, Scavone & Kergomard 2013'],
    isOurs: true,
    holdsFor:
      'On one horn far better than ±10 cents; between two horns each brings its own ±10. What is inside its ± cannot be shown.',
    note: { name: 'side-by-side', heading: 'The ± of a difference' },
  },
  calibration: {
    title: 'Fitted to the notes played',
    words: ['calibration', 'take, pitch log'],
    formula:
      'A few unknowns of this horn and this day are moved until the notes computed lie as near as they can to the notes played; the ± is what the notes leave open.',
    sources: ['Levenberg 1944, Marquardt 1963', 'JCGM 100:2008'],
    isOurs: true,
    holdsFor: 'The player, the reed and the day the notes were played on. A player repeats to a few cents.',
    note: { name: 'calibration', heading: 'The fit' },
  },
  'proposal-gain': {
    title: 'What a proposal brings',
    words: ['gain (of a proposal)', 'short list', 'spread (of the pitch)'],
    formula:
      'All stops are moved at once within what arms and reach allow, so that what is asked for costs least; the gain is the horn as proposed less the horn as it stands.',
    sources: ['Goldfarb & Idnani 1983', 'Nocedal & Wright 2006'],
    isOurs: true,
    holdsFor:
      'Keys moved one against another by corks and bending; the pitch of the whole horn is left to the mouthpiece on its cork.',
    note: { name: 'proposed-setup', heading: 'What it is worth' },
  },
};

/** The reason of what a whole column of figures is. @param figure as its head says it @param of `every note` */
export function columnReason(kind: ReasonKind, figure: string, of: string): Reason {
  return { kind, figure, of, inputs: [], budget: null, remarks: [] };
}
