/** The demo horns' plans, from the smallest horn to the largest. */
import { ALTO } from './plan-alto.ts';
import { BARITONE } from './plan-baritone.ts';
import { SOPRANO } from './plan-soprano.ts';
import { TENOR } from './plan-tenor.ts';
import type { HornPlan } from './plan.ts';

export const PLANS: readonly HornPlan[] = [SOPRANO, ALTO, TENOR, BARITONE];
export type { HornPlan, PadPlan } from './plan.ts';
export { ALTO, BARITONE, SOPRANO, TENOR };
