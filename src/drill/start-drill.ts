import { CAUTION_IN_SHORT } from './cautions.ts';
import { NO_HOLD } from './clutch-hold.ts';
import type { Block, DrillModel } from './drill-model.ts';
import type { DrillSetup } from './drill-setup.ts';
import { FIRST_OF_DAY_REPS, startsNewDay } from './feedback-schedule.ts';
import { firstLiveRep } from './live/live-rep.ts';
import { targetOnsetS } from './onset-search.ts';
import { NO_PROGRESS } from './plan/plan-progress.ts';
import { NO_LEVELS } from './recording.ts';
import { enterArming } from './stages.ts';

/**
 * The drill before its first message.
 *
 * @throws RangeError for a target that is not over time, or a block without reps
 */
export function startDrill(setup: DrillSetup): DrillModel {
  const { target, reps, live, plan } = setup;
  if (target.domain !== 'time') throw new RangeError(`the drill needs ${target.id} over time`);
  if (!(Number.isInteger(reps) && reps > 0)) throw new RangeError(`a block of ${reps} reps`);
  const idle: DrillModel = {
    setup,
    paced: false,
    targetOnsetS: targetOnsetS(target),
    live: live === null ? null : firstLiveRep(live),
    heat: null,
    atS: 0,
    stage: { kind: 'paused' },
    levels: NO_LEVELS,
    gear: null,
    recording: null,
    block: firstBlock(setup),
    unscored: [],
    attempts: 0,
    recent: setup.recent,
    repsInLife: setup.repsInLife,
    plan: plan === null ? null : NO_PROGRESS,
    feedback: 'shown',
    chosenFeedback: null,
    asksRating: setup.asksRating,
    rating: null,
    note: null,
    display: setup.display,
    menu: null,
    clutchHold: NO_HOLD,
    lostDevices: [],
    message: null,
    health: [],
    dropped: 0,
  };
  // stands until the first rep is over
  const remarks = [
    ...(setup.isFirstRun ? [CAUTION_IN_SHORT] : []),
    ...(setup.forceRemark === null ? [] : [setup.forceRemark]),
    ...(plan?.remarks ?? []),
  ];
  const message = remarks.length === 0 ? null : [...remarks, BEGIN].join(' ');
  return { ...enterArming(idle, 0), message };
}

/** What the remarks stand in the place of. */
const BEGIN = 'Take your foot off the brake.';

function firstBlock({ reps, repsInLife, hoursSinceLastRep, plan }: DrillSetup): Block {
  const block = { number: 1, place: 1, done: [] };
  const planned = plan?.blocks[0];
  if (planned !== undefined) return { ...block, phase: planned.phase, reps: planned.reps.length };
  return startsNewDay(repsInLife, hoursSinceLastRep)
    ? { ...block, phase: 'first-of-day', reps: FIRST_OF_DAY_REPS }
    : { ...block, phase: 'block', reps };
}
