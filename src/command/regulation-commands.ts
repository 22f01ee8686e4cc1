import {
  arcGap,
  changePads,
  findLargestLeak,
  mapLeaks,
  ringGap,
  seatLeak,
  studyLeak,
  USUAL_STOCK,
  type LeakOptions,
  type Leaks,
  type PadStock,
} from '../acoustics/index.ts';
import { reportLargestLeak, reportLeak, reportLeakMap } from '../documents/leak-report.ts';
import { reportAskedOpening, reportLinks } from '../documents/links-report.ts';
import { reportPadChange } from '../documents/pad-change-report.ts';
import { reportPadFit } from '../documents/pad-fit-report.ts';
import { reportRegulation } from '../documents/regulation-report.ts';
import { regulationFacts, type KnownCup, type RegulationFacts } from '../documents/regulation-facts.ts';
import type { LoadedHorn } from '../documents/to-acoustics.ts';
import { BadInput } from './bad-input.ts';
import { DAY, json, neighbours, type Command } from './command.ts';
import { readHorn } from './files.ts';
import { printHeightOrLeak } from './height-or-leak-command.ts';
import {
  a4Option,
  airOption,
  fingeringOption,
  keyOption,
  numberOption,
  namedNumbersOption,
  numbersOption,
  onlyFile,
  textOption,
  type Words,
} from './options.ts';
import {
  askedText,
  largestLeakText,
  leakMapText,
  leakText,
  linksText,
  orderText,
  padChangeText,
  padFitText,
} from './regulation-text.ts';

const MM = 1e-3;

/** The commands about pads, links and leaks. */
export const REGULATION_COMMANDS: Readonly<Record<string, Command>> = {
  leak: {
    usage:
      'leak <horn.json> [--pad 10 [--by <driver> | all]] --gap-mm 0.05 [--arc-deg 360] [--at front|back] [--map] [--note D4 --lost-db 3] [--heights --note E4 | --key 6] [--json]',
    allowed: [
      ...['pad', 'by', 'gap-mm', 'arc-deg', 'at', 'map', 'note', 'lost-db', 'heights', 'key'],
      ...['setup', 'json', 'a4', 'neighbours', ...DAY],
    ],
    run: printLeak,
  },
  links: {
    usage: 'links <horn.json> [--setup <setup.json>] [--pad 15 --front-mm 4.8] [--json]',
    allowed: ['setup', 'json', 'pad', 'front-mm'],
    run: printLinks,
  },
  padfit: {
    usage:
      'padfit <horn.json> [--key 7 --floor-mm 4.9] [--stock-mm 3.2,4.1,4.6] [--tolerance-mm 0.1] [--bed-mm 0.2,1] [--seat-mm 0.2] [--json]',
    allowed: ['key', 'floor-mm', 'stock-mm', 'tolerance-mm', 'bed-mm', 'seat-mm', 'setup', 'json'],
    run: printPadFit,
  },
  padchange: {
    usage:
      'padchange <horn.json> --thickness-mm 4.6 [--key 7] [--dropped-in] [--setup <setup.json>] [--json]',
    allowed: ['thickness-mm', 'key', 'dropped-in', 'setup', 'json', 'a4', 'neighbours', ...DAY],
    run: printPadChange,
  },
  order: {
    usage:
      'order <horn.json> --setup <as set> [--seats-mm 7=0.05,10=0.1] [--done-mm "seat e=0,height e=8"] [--json]',
    allowed: ['setup', 'seats-mm', 'done-mm', 'json'],
    run: printOrder,
  },
};

function load(words: Words): { loaded: LoadedHorn; facts: RegulationFacts } {
  const loaded = readHorn(onlyFile(words), words.options['setup'] as string | undefined);
  return { loaded, facts: regulationFacts(loaded) };
}

const asJson = (words: Words): boolean => words.options['json'] === true;

function printLeak(words: Words): string {
  const { loaded, facts } = load(words);
  const { horn } = facts;
  const air = airOption(words, loaded);
  const options: LeakOptions = { a4: a4Option(words), ...neighbours(words) };
  if (words.options['heights'] === true) return printHeightOrLeak(words, loaded, facts, options);
  if (words.options['map'] === true) {
    const map = reportLeakMap(horn, mapLeaks(horn, loaded.setup, gapOption(words, false), air, options));
    return asJson(words) ? json(map) : leakMapText(map);
  }
  if (words.options['lost-db'] !== undefined) {
    const fingering = fingeringOption(words);
    const lostDb = numberOption(words, 'lost-db', { low: 0.01, high: 60, unit: 'dB' }, undefined);
    const leaksAt = faultOption(words, loaded, facts);
    const found = findLargestLeak(horn, loaded.setup, leaksAt, air, { fingering, lostDb, options });
    const report = reportLargestLeak(horn, { fingering: fingering.id, lostDb }, found);
    return asJson(words) ? json(report) : largestLeakText(report);
  }
  const report = reportLeak(
    horn,
    studyLeak(horn, loaded.setup, givenLeaks(words, loaded, facts), air, options),
  );
  return asJson(words) ? json(report) : leakText(report);
}

/** The leak asked for; without a pad, what the setup's own links leave. */
function givenLeaks(words: Words, loaded: LoadedHorn, facts: RegulationFacts): Leaks {
  if (words.options['pad'] !== undefined) {
    const early = words.options['by'] !== undefined;
    return faultOption(words, loaded, facts)(gapOption(words, early));
  }
  if (facts.screws.length === 0) {
    throw new BadInput('missing --pad; expected a pad, or a setup that says what its links leave open');
  }
  return { seats: new Map(), screws: facts.screws };
}

/** m; minus only for a link that is early. */
function gapOption(words: Words, early: boolean): number {
  return numberOption(words, 'gap-mm', { low: early ? -2 : 0.001, high: 2, unit: 'mm' }, undefined) * MM;
}

/** What leaks at a gap: a pad's seat, or links onto it. */
function faultOption(words: Words, loaded: LoadedHorn, { horn }: RegulationFacts): (gap: number) => Leaks {
  const pad = keyOption(words, loaded, 'pad');
  const by = words.options['by'];
  if (by !== undefined) {
    const onto = horn.keywork.links.filter((l) => l.driven === pad);
    const drivers = by === 'all' ? onto.map((l) => l.driver) : [keyOption(words, loaded, 'by')];
    if (!drivers.every((driver) => onto.some((l) => l.driver === driver)) || drivers.length === 0) {
      const known = onto.length === 0 ? 'a pad that a link drives' : onto.map((l) => l.driver).join(', ');
      throw new BadInput(`invalid --by: "${String(by)}" does not drive ${pad}; expected ${known}`);
    }
    return (left) => ({
      seats: new Map(),
      screws: drivers.map((driver) => ({ driver, driven: pad, left })),
    });
  }
  const arcDeg = numberOption(words, 'arc-deg', { low: 1, high: 360, unit: '°' }, 360);
  const at = words.options['at'] ?? 'front';
  if (at !== 'front' && at !== 'back')
    throw new BadInput(`invalid --at: "${String(at)}"; expected front or back`);
  const shape = (gap: number) => (arcDeg === 360 ? ringGap(gap) : arcGap(gap, (arcDeg * Math.PI) / 180, at));
  return (gap) => seatLeak(pad, shape(gap));
}

function printLinks(words: Words): string {
  const { loaded, facts } = load(words);
  if (words.options['pad'] === undefined) {
    const report = reportLinks(loaded, facts);
    return asJson(words) ? json(report) : linksText(report);
  }
  const pad = keyOption(words, loaded, 'pad');
  const front = numberOption(words, 'front-mm', { low: 0.1, high: 60, unit: 'mm' }, undefined);
  const asked = reportAskedOpening(loaded, facts, pad, front);
  return asJson(words) ? json(asked) : askedText(asked);
}

function printPadFit(words: Words): string {
  const { loaded, facts } = load(words);
  const report = reportPadFit(loaded, cupsOption(words, loaded, facts), stockOption(words));
  return asJson(words) ? json(report) : padFitText(report);
}

/** The cups the documents know, or the one given by hand. */
function cupsOption(words: Words, loaded: LoadedHorn, { cups }: RegulationFacts): readonly KnownCup[] {
  if (words.options['key'] === undefined) return cups;
  const pad = keyOption(words, loaded);
  const known = cups.filter((c) => c.cup.pad === pad);
  if (words.options['floor-mm'] === undefined && known.length > 0) return known;
  const floor = numberOption(words, 'floor-mm', { low: 0.5, high: 30, unit: 'mm' }, undefined) * MM;
  const { padRadius } = loaded.setup.keys.get(pad)!;
  const cup = { ...(known[0]?.cup ?? { padDiameter: 2 * padRadius }), pad, floor };
  return [{ cup, floorFrom: 'measured' }];
}

function stockOption(words: Words): PadStock {
  const mm = { low: 0, high: 12, unit: 'mm' };
  const thicknesses = numbersOption(words, 'stock-mm', { ...mm, low: 0.5 });
  const bed = numbersOption(words, 'bed-mm', { ...mm, high: 6 });
  if (bed !== undefined && bed.length !== 2)
    throw new BadInput(`invalid --bed-mm: ${bed.length} numbers; expected the least and the most, as 0.2,1`);
  const { tolerance, seat } = USUAL_STOCK;
  return {
    ...USUAL_STOCK,
    ...(thicknesses === undefined ? {} : { thicknesses: thicknesses.map((t) => t * MM) }),
    ...(bed === undefined ? {} : { bed: { least: bed[0] * MM, most: bed[1] * MM } }),
    tolerance: numberOption(words, 'tolerance-mm', { ...mm, high: 2 }, tolerance / MM) * MM,
    seat: numberOption(words, 'seat-mm', { ...mm, high: 3 }, seat / MM) * MM,
  };
}

/** From the horn as it stands to the setup named, which may be sparse. */
function printOrder(words: Words): string {
  const asSet = textOption(words, 'setup');
  if (onlyFile(words) === '-')
    throw new BadInput('expected a horn file; standard input cannot be read twice');
  const asFound = readHorn(onlyFile(words), undefined);
  const gaps = namedNumbersOption(words, 'seats-mm', { low: 0, high: 2, unit: 'mm' }).map(
    ([name, gapMm]) =>
      [keyOption({ ...words, options: { 'seats-mm': name } }, asFound, 'seats-mm'), gapMm] as const,
  );
  const done = namedNumbersOption(words, 'done-mm', { low: -5, high: 60, unit: 'mm' });
  const report = reportRegulation(
    asFound,
    readHorn(onlyFile(words), asSet),
    new Map(gaps),
    done.map(([id, valueMm]) => ({ id, valueMm })),
  );
  return asJson(words) ? json(report) : orderText(report);
}

function printPadChange(words: Words): string {
  const { loaded, facts } = load(words);
  const thickness = numberOption(words, 'thickness-mm', { low: 0.5, high: 12, unit: 'mm' }, undefined) * MM;
  const keys = [...loaded.setup.keys.keys()];
  const pads = words.options['key'] === undefined ? keys : [keyOption(words, loaded)];
  const seating = words.options['dropped-in'] === true ? 'dropped in' : 'levelled';
  const thicker = new Map(pads.map((id) => [id, thickness - loaded.setup.keys.get(id)!.padThickness]));
  const change = changePads(facts.horn, loaded.setup, thicker, airOption(words, loaded), {
    ...{ a4: a4Option(words), ...neighbours(words), seating },
    footPerFront: facts.footPerFront,
  });
  const report = reportPadChange(facts.horn, change, seating);
  return asJson(words) ? json(report) : padChangeText(report);
}
