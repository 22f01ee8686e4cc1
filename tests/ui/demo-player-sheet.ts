import type { SetLike } from '../../src/documents/set-like.ts';
import type { BenchContents } from '../../src/documents/bench-contents.ts';
import { findPlayerSheetFacts, type PlayerSheetFacts } from '../../src/documents/player-sheet-facts.ts';
import { withWishForAll } from '../../src/documents/player-sheet-edits.ts';
import { keyedHoles } from '../../src/documents/horn-document.ts';
import { withSet } from '../../src/ui/state/key-lengths.ts';
import { playerSheetQuestion } from '../../src/ui/state/player-sheet-state.ts';
import { onTheBench } from './demo.ts';

/** The numbers of the player’s sheet as the worker works them out. @throws Error where it cannot */
export function playerSheetFacts(contents: BenchContents): PlayerSheetFacts {
  const outcome = findPlayerSheetFacts(playerSheetQuestion(contents));
  if (!outcome.ok) throw new Error(outcome.message);
  return outcome.value;
}

/** A visit with more told of it. */
export function withVisit(
  contents: BenchContents,
  told: Partial<BenchContents['visit']['document']>,
): BenchContents {
  const { visit } = contents;
  return { ...contents, visit: { ...visit, document: { ...visit.document, ...told } } };
}

/** The demo alto with its D key raised, for a player who wants it low. */
export function raisedD(): BenchContents {
  const told = {
    player: 'Marta Quill',
    measuredBy: 'Jonas Reed',
    wish: 'Low E is stuffy. Can the keys come down?',
    wishKey: 'd',
    wishOpeningMm: 6.5,
  };
  return withVisit(withSet(onTheBench('alto'), 'd', { mm: 8.9, at: 'front' }), told);
}

/** Every key of the demo alto set otherwise, and everything named at length. */
export function everyKeySet(): BenchContents {
  const long = 'Wilhelmina Featherstonehaugh-Montgomery of the Upper Market Wind Orchestra';
  const { horn } = onTheBench('alto');
  const moved = keyedHoles(horn.document).reduce((now, { id }, i) => {
    const { openingMm, measuredAt } = now.asFound.document.keys.find(({ pad }) => pad === id)!;
    return withSet(now, id, { mm: openingMm! + [0.7, -0.6, 0.4][i % 3], at: measuredAt! });
  }, onTheBench('alto'));
  const named = {
    ...moved,
    horn: {
      ...moved.horn,
      document: {
        ...moved.horn.document,
        name: 'Larkfield alto, the silver one with the engraved bell and the replaced neck',
        serial: '00417-B/1958 (second number inside the bow)',
      },
    },
  };
  return withVisit(named, {
    player: long,
    measuredBy: long,
    wish:
      'The low notes feel stuffy and slow to speak, above all low E and low C; the palm keys are sharp. ' +
      'Could the right-hand keys come down a little, as on my other horn, without losing the middle D?',
    wishKey: 'd',
    wishOpeningMm: 6.5,
  });
}

/** The same visit with all keys wished a millimetre lower. */
export function wishedForAll(contents: BenchContents): BenchContents {
  const { visit } = contents;
  return { ...contents, visit: { ...visit, document: withWishForAll(visit.document, -1) } };
}

/** The same visit of a horn started from an example, on which nothing was read. */
export function ofTheExample({ horn, asFound, ...rest }: BenchContents): BenchContents {
  const holes = horn.document.holes.map(({ readings: _read, ...hole }) => hole);
  const keys = asFound.document.keys.map(({ readings: _read, ...key }) => key);
  return {
    ...rest,
    horn: { ...horn, document: { ...horn.document, origin: 'template', holes } },
    asFound: { ...asFound, document: { ...asFound.document, origin: 'template', keys } },
  };
}

/** The same visit, its horn set like one with a long name. */
export function setLikeAnother(contents: BenchContents, by: SetLike['by']): BenchContents {
  const pads = keyedHoles(contents.horn.document).map(({ id }) => ({
    pad: id,
    frontMm: 8.4,
    frontPlusMinusMm: 0.2,
    ventSharePercent: 77,
    ventSharePlusMinusPercent: 1.2,
  }));
  const horn = 'Larkfield alto of the Thistledown conservatoire';
  return withVisit(contents, { setLike: { horn, by, pads } });
}
