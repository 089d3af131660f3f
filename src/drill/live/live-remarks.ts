import type { LivePlan } from './live-plan.ts';

const RAIL =
  'The car stays on its line whatever the wheel does: this teaches order and rhythm, not distance judgement.';
const NO_WHEEL = 'No wheel: braking only, the car steers itself.';
const NO_PADDLES = "No paddles: the downshifts come at the target's places.";

/** What has to be said beside the picture, the most important first. */
export function liveRemarks({ controls, notes }: LivePlan): readonly string[] {
  return [
    ...(controls.steering ? [] : [NO_WHEEL]),
    ...(controls.paddles ? [] : [NO_PADDLES]),
    ...notes,
    RAIL,
  ];
}
