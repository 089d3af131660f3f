import { LEAD_IN_S } from '../live/live-zone.ts';
import { afterTimes } from './after-times.ts';
import type { RepTag } from './drill-message.ts';
import type { DrillModel, OwnTraces } from './drill-model.ts';
import { RATED_HOLD_S } from './drill-setup.ts';
import { timingAfter } from './event/timing-after.ts';
import type { RepDrive } from './live/rep-drive.ts';
import { heatAfter } from './live/stint-heat.ts';
import { firstRating } from './on-rating.ts';
import { gridTarget, plannedRep } from './plan/planned-rep.ts';
import { byPlan, planAfterRep } from './plan/rep-by-plan.ts';
import { LEAD_S, repRecord } from './recording.ts';
import { ARM_S, type Step } from './stages.ts';
import { targetOf } from './target-of.ts';

/** A record of the live car begins before it rolls: the baseline of the foot at rest is part of it. */
const LIVE_LEAD_S = LEAD_IN_S + ARM_S;

/** Why a rep does not count, in the history's words and in the driver's. */
interface VoidReason {
  readonly voided: 'aborted' | 'device lost';
  readonly reason: string;
}

/** The rep under way. */
function currentTag(model: DrillModel): RepTag {
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

/** The rep is void: it is written down with its reason. Only an aborted rep uses up its place in the block. */
export function voidRep(
  model: DrillModel,
  span: { readonly cueS: number; readonly endS: number },
  { voided, reason }: VoidReason,
): Step {
  const tag = currentTag(model);
  const { block, live } = model;
  const record = recordOf(model, span);
  const done = {
    tag,
    outcome: null,
    voided,
    call: null,
    sentence: reason,
    glance: [],
    warning: null,
    revealAtS: span.endS,
    rating: null,
    curve: null,
    gridTarget: gridTarget(model),
    drawn: null,
  };
  const restFromS = span.endS;
  const stage = {
    kind: 'after',
    rep: tag,
    revealAtS: span.endS,
    restFromS,
    nextS: restFromS + restAfterVoid(model),
    answeredAtS: span.endS,
    onRoad: false,
    own: null,
    drive: null,
  } as const;
  const counted =
    voided === 'aborted'
      ? countedRep(model)
      : { ...model, attempts: model.attempts + 1, recording: null };
  return [
    {
      ...counted,
      plan: planAfterRep(model, { tag, record, counts: voided === 'aborted' }),
      atS: span.endS,
      stage,
      block: { ...counted.block, done: [done, ...block.done] },
      message: reason,
    },
    [
      {
        kind: 'store',
        rep: {
          ...tag,
          target: targetOf(model),
          zone: live?.zone ?? null,
          ...byPlan(model, tag),
          rating: null,
          voided,
          record,
          outcome: null,
        },
      },
    ],
  ];
}

/** In a lap the road goes on, result or not. */
function restAfterVoid(model: DrillModel): number {
  const { showS, restS } = timingAfter(model, 0);
  return plannedRep(model)?.zone.gapS === undefined ? restS : showS + restS;
}

function countedRep(model: DrillModel): DrillModel {
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

function recordOf(
  { recording, setup, atS }: DrillModel,
  span: { readonly cueS: number; readonly endS: number },
) {
  if (recording === null) throw new Error(`no recording of the rep that ends at ${atS} s`);
  const leadS = setup.live === null ? LEAD_S : LIVE_LEAD_S;
  return repRecord(recording, span, setup.axes, setup.brakeStepLevel, leadS);
}
