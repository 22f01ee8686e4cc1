import {
  makeAirColumn,
  makeProposalProblem,
  ownPose,
  playWholeHorn,
  proposeSetup,
  solveProposal,
  withOpening,
} from '../../src/acoustics/index.ts';
import { demoHorn } from '../acoustics/demo-horns.ts';
import { compare, timeRuns, type Comparison } from './timing.ts';

/** The proposed setup, short list included, against the same search with slopes by central differences. */

const AIR = makeAirColumn();
const RUNS = 9;
const WARM_UP = 5;

export function proposalAgainst(): Comparison {
  const { horn, setup } = demoHorn('alto');
  const { plays } = solveProposal(makeProposalProblem(horn, setup, AIR));
  const near = new Map(
    playWholeHorn(horn, setup, AIR, { answers: false }).flatMap(({ fingering, outcome }) =>
      outcome.found ? [[fingering.id, outcome.resonance.frequency] as const] : [],
    ),
  );
  // What the slopes of every play would cost: each stop up and down.
  const differences = (): void => {
    for (let play = 0; play < plays; play++) {
      for (const id of setup.keys.keys()) {
        const { front } = ownPose(horn, setup, id);
        for (const by of [1e-5, -1e-5]) {
          const moved = withOpening(setup, id, { at: 'front', height: front + by });
          playWholeHorn(horn, moved, AIR, { near, answers: false });
        }
      }
    }
  };
  const propose = (): unknown => proposeSetup(horn, setup, AIR);
  timeRuns(WARM_UP, propose);
  const ours = timeRuns(RUNS, propose);
  const theirs = timeRuns(3, () => {
    propose();
    differences();
  });
  return compare(
    'the proposed setup, all stops with its short list, against slopes by central differences',
    `${setup.keys.size} stops, ${plays} plays of the whole horn with slopes`,
    ours,
    theirs,
  );
}
