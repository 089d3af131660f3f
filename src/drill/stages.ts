import type { DrillEffect } from './drill-message.ts';
import type { DrillModel } from './drill-model.ts';
import type { Feedback } from './drill-view.ts';
import { scheduledFeedback } from './feedback-schedule.ts';
import { initialGear } from './gear.ts';
import { callOf, type LiveRep, nextLiveRep } from './live/live-rep.ts';
import { planFeedback } from './plan/plan-feedback.ts';
import { repCounts } from './plan/plan-progress.ts';
import { gridTarget, plannedRep, setUpPlannedRep } from './plan/planned-rep.ts';
import { endWait } from './rating-wait.ts';
import { summaryByTarget } from './summary-by-target.ts';
import { targetOf } from './target-of.ts';

/** A model and what it wants done. */
export type Step = readonly [DrillModel, readonly DrillEffect[]];

/** A foot this light is off the brake. */
export const FOOT_OFF_LEVEL = 0.05;
/** How long the foot has to be off before the countdown starts. */
export const ARM_S = 0.3;

/** Waits for lost devices, then for the foot to come off the brake. The rep's feedback is planned here. */
export function enterArming(before: DrillModel, atS: number): DrillModel {
  const model = setUpPlannedRep(endWait(before, atS));
  const { levels, lostDevices } = model;
  const live = plannedLiveRep(model);
  const isOff = levels.brake !== null && levels.brake <= FOOT_OFF_LEVEL;
  return {
    ...model,
    atS,
    stage:
      lostDevices.length > 0
        ? { kind: 'device-lost' }
        : { kind: 'arming', offSinceS: isOff ? atS : null },
    recording: null,
    feedback: plannedFeedback(model),
    live,
    gear: initialGear(targetOf({ ...model, live })),
    message: null,
  };
}

/** What the next rep shows: a first-of-day rep nothing, else the driver's choice, else the plan's rule or the schedule. */
export function plannedFeedback(model: DrillModel): Feedback {
  const { block, chosenFeedback, setup, repsInLife } = model;
  if (block.phase === 'first-of-day') return 'first-of-day';
  if (block.phase === 'carry-over') return 'hidden';
  const chosen = chosenFeedback ?? setup.feedback;
  return chosen ?? feedbackByPlan(model) ?? scheduledFeedback(repsInLife, setup.seed);
}

function feedbackByPlan(model: DrillModel): Feedback | null {
  const { setup, plan, block } = model;
  const rep = plannedRep(model);
  if (setup.plan === null || plan === null || rep === null) return null;
  return planFeedback(setup.plan, block.phase, repCounts(plan, rep.zone), setup.seed);
}

/** The zone of the next attempt; null in a drill over time. */
function plannedLiveRep({ setup, live, heat, block, attempts }: DrillModel): LiveRep | null {
  if (setup.live === null || live === null) return null;
  const call = callOf(setup.live, setup.seed, attempts + 1, block.phase);
  return nextLiveRep(setup.live, live, heat, call);
}

export function enterSummary(model: DrillModel, atS: number): DrillModel {
  const byTarget = summaryByTarget(model.block.done, gridTarget(model), model.setup.units);
  return {
    ...model,
    atS,
    stage: { kind: 'summary', summary: byTarget[0].summary, byTarget },
    recording: null,
    message: null,
  };
}

/** The next block of the practice, with cold brakes in a stint; first-of-day reps are only ever the first. */
export function nextBlock(model: DrillModel): DrillModel {
  const { block, setup } = model;
  const number = block.number + 1;
  const planned = setup.plan?.blocks[number - 1];
  const phase = planned?.phase ?? 'block';
  const reps = planned?.reps.length ?? setup.reps;
  return { ...model, heat: null, block: { number, phase, reps, place: 1, done: [] } };
}

export function isBlockOver({ block }: DrillModel): boolean {
  return block.place > block.reps;
}
