import { hingedFlow } from './hinged-flow.ts';
import type { PadModel } from './pad-model.ts';
import { publishedParallelFit } from './published-parallel-fit.ts';

/** Every model of a pad over a hole, the one in use first. */
export const PAD_MODELS: readonly PadModel[] = [hingedFlow, publishedParallelFit];

/** The model the workbench uses unless told otherwise. */
export const DEFAULT_PAD_MODEL: PadModel = PAD_MODELS[0];
