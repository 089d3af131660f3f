import { LEAD_IN_S } from '../live/live-zone.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import { afterTimes } from './after-times.ts';
import type { RepTag } from './drill-message.ts';
import type { DrillModel, OwnTraces } from './drill-model.ts';
import { RATED_HOLD_S } from './drill-setup.ts';
import type { RepDrive } from './live/rep-drive.ts';
import { heatAfter } from './live/stint-heat.ts';
import { firstRating } from './on-rating.ts';
import { gridTarget } from './plan/planned-rep.ts';
import { planAfterRep } from './plan/rep-by-plan.ts';
import { LEAD_S, repRecord } from './recording.ts';
import { ARM_S, type Step } from './stages.ts';
import { levelPerShare } from './target-force.ts';
import { targetOf } from './target-of.ts';

/** A record of the live car begins before it rolls: the baseline of the foot at rest is part of it. */
const LIVE_LEAD_S = LEAD_IN_S + ARM_S;

/** The rep under way. */
export function currentTag(model: DrillModel): RepTag {
  const { block, attempts, feedback } = model;
  return {
    number: attempts + 1,
    place: block.place,
    block: block.number,
    phase: block.phase,
    feedback,
  };
}

/** The rep is over: its record goes to be scored, and the result is held back. */
export function finishRep(
  model: DrillModel,
  span: { readonly cueS: number; readonly endS: number },
  own: OwnTraces | null,
  drive: RepDrive | null = null,
): Step {
  const tag = currentTag(model);
  const { setup, live, paced } = model;
  const record = recordOf(model, span);
  const target = targetOf(model);
  const zone = live?.zone ?? null;
  const { holdS: usualS } = setup.timing;
  const holdS = model.asksRating ? Math.max(usualS, RATED_HOLD_S) : usualS;
  const times = afterTimes(model, span.endS, holdS);
  const { revealAtS } = times;
  const stage = { kind: 'after', rep: tag, ...times, own, drive } as const;
  const next = {
    ...countedRep(model),
    plan: planAfterRep(model, { tag, record, counts: true }),
    atS: span.endS,
    stage,
    unscored: [
      ...model.unscored,
      {
        ...{ tag, record, target, paced, zone, drive, rating: null, revealAtS },
        gridTarget: gridTarget(model),
      },
    ],
    rating: firstRating(model),
    heat: heatAfter(model, record),
  };
  return [next, [{ kind: 'score', rep: tag.number, record, target, paced, zone }]];
}

/** The rep uses up its place in the block. */
export function countedRep(model: DrillModel): DrillModel {
  const { block } = model;
  return {
    ...model,
    block: { ...block, place: block.place + 1 },
    attempts: model.attempts + 1,
    repsInLife: model.repsInLife + 1,
    recording: null,
    rating: null,
    message: null,
  };
}

/** What was recorded of the rep under way, its lead included. */
export function recordOf(
  { recording, setup, atS }: DrillModel,
  span: { readonly cueS: number; readonly endS: number },
): RepRecord {
  if (recording === null) throw new Error(`no recording of the rep that ends at ${atS} s`);
  const leadS = setup.live === null ? LEAD_S : LIVE_LEAD_S;
  const stepLevel = setup.brakeStepLevel * levelPerShare(setup);
  return repRecord(recording, span, setup.axes, stepLevel, leadS);
}
