import { LEAD_IN_S } from './live-zone.ts';

/** 1 / `STEP_S`: dividing by a whole number gives the very numbers that times on the record's grid are. */
const STEPS_PER_S = 1000;

/** Time of the start of a step, seconds from the cue. */
export function stepTimeS(step: number): number {
  return (step - LEAD_IN_S * STEPS_PER_S) / STEPS_PER_S;
}
