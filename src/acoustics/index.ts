/** The public surface of the acoustics: other rooms import from here only. SI in, SI out. */
export {
  airAtTemperature,
  airLogSlopes,
  makeAirColumn,
  airAt,
  REFERENCE_C,
  type Air,
  type AirColumn,
} from './air/air.ts';
export { boreVolume, cutBore, makeBore, radiusAt, type Bore, type BoreStation } from './bore/bore.ts';
export { coneTwoPortAt, makeConePiece, LONGEST_PIECE, type ConePiece } from './bore/cone.ts';
export { END_FLANGED, END_UNFLANGED, flangedEndLength, openEndImpedanceAt } from './bore/open-end.ts';
export * from './bore/wall-losses.ts';
export { radialLeakResistance } from './holes/pad-gap/gap-viscosity.ts';
export { ruleOfThumbParallel } from './holes/pad-gap/rule-of-thumb.ts';
export * from './holes/pad-models/index.ts';
export {
  PAD_DIRECTIONS,
  scaledPadModel,
  type PadEnd,
  type PadModel,
  type PadOverHole,
} from './holes/pad-models/pad-model.ts';
export { GEOMETRY } from './holes/open-hole.ts';
export * from './holes/leak-ends.ts';
export * from './holes/leak-gap.ts';
export * from './holes/leak-slit.ts';
export * from './holes/pad-over-hole.ts';
export * from './holes/hole-lengths.ts';
export * from './holes/hole-tube.ts';
export * from './holes/hole-variations.ts';
export * from './holes/tone-hole.ts';
export * from './horn.ts';
export * from './keywork/closing.ts';
export * from './keywork/closing-contact.ts';
export * from './keywork/fingerings.ts';
export * from './keywork/hinge.ts';
export * from './keywork/link-groups.ts';
export * from './keywork/link-ratio.ts';
export * from './keywork/linkage.ts';
export * from './keywork/speaks-under.ts';
export * from './network/input-admittance.ts';
export * from './network/neighbours.ts';
export * from './network/network.ts';
export * from './network/sensitivities.ts';
export { besselRatioAt } from './numerics/bessel-ratio.ts';
export { findRoot, findThreshold, type RootOutcome } from './numerics/find-root.ts';
export * from './resonance/lattice-cutoff.ts';
export * from './resonance/resonances.ts';
export { type ComparedKey, type KeyDifference, type KeyInSetup } from './studies/compare-keys.ts';
export {
  isSameHorn,
  type Compared,
  type CompareOptions,
  type NoteDifference,
  type NoteInSetup,
} from './studies/compare-notes.ts';
export * from './studies/calibration.ts';
export * from './studies/calibration-causes.ts';
export { type Told, type AlikePair, type ToldUnknown } from './studies/calibration-told.ts';
export * from './studies/calibration-unknowns.ts';
export * from './studies/compare-setups.ts';
export * from './studies/follow-openings.ts';
export * from './studies/decibels.ts';
export * from './studies/height-or-leak.ts';
export * from './studies/leak-map.ts';
export * from './studies/leak-study.ts';
export * from './studies/link-study.ts';
export * from './studies/link-limits.ts';
export { type LinkedHorn } from './studies/linked-horn.ts';
export * from './studies/lost-motion.ts';
export * from './studies/loud-playing.ts';
export * from './studies/match-openings.ts';
export * from './studies/note-heights.ts';
export * from './studies/note-leaks.ts';
export * from './studies/noticed.ts';
export * from './studies/readings.ts';
export * from './studies/uncertainty.ts';
export * from './studies/measure-next.ts';
export * from './studies/scale-budgets.ts';
export * from './studies/venting-budgets.ts';
export * from './studies/pad-change.ts';
export * from './studies/pad-fit.ts';
export { type Enough } from './studies/proposal-enough.ts';
export {
  makeProposalProblem,
  PROPOSAL_TERMS,
  PROPOSAL_WEIGHTS,
  type ProposalOptions,
  type ProposalTerm,
  type ProposalWeights,
  type TunedBy,
} from './studies/proposal-problem.ts';
export { type ProposalDrive, type ProposalHold, type ProposedKey } from './studies/proposal-reasons.ts';
export * from './studies/proposal-budgets.ts';
export * from './studies/proposal.ts';
export * from './studies/regulation-order.ts';
export * from './studies/scale.ts';
export * from './studies/diminishing-return.ts';
export * from './studies/venting.ts';
export * from './studies/venting-study.ts';
export * from './studies/whole-horn.ts';
export * from './two-port.ts';
