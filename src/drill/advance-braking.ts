import type { TargetMarks } from '../target/target.ts';
import type { RigBatch } from '../trace/rig-batch.ts';
import type { DrillModel, Stage } from './drill-model.ts';
import { addStretch } from './live-error.ts';
import { appendOwn, followWheel, placeAt } from './pace-under-way.ts';
import { type Advance, heldLevel, indexAfter, moveOn, standAt, stay } from './progress.ts';
import { finishRep } from './rep-end.ts';

/** Off for 0.3 s is off for good; another 0.3 s is recorded, so that no filter sees the edge. */
const AFTER_OFF_S = 0.6;
/** How much longer than the target a brake that is not released is watched. */
const NOT_RELEASED_S = 1;
/** How long a wheel that paces the target is waited for: with the brake off, and with the brake on. */
const WHEEL_WAIT_S = 1;
const LONGEST_WAIT_S = 4;

type Braking = Extract<Stage, { kind: 'braking' }>;

export const advanceBraking: Advance<'braking'> = (model, stage, batch, cursor) => {
  const { timeS, value } = batch.brake;
  const { marks } = model.setup.target;
  const moved = withWheel(stage, batch, marks);
  const ends = endsOf(moved, marks);
  let off = stage.offSinceS;
  let i = cursor;
  for (; i < timeS.length && timeS[i]! <= endOfRepS(ends, off); i++)
    off = value[i]! > stage.offLevel ? null : (off ?? timeS[i]!);
  const endS = endOfRepS(ends, off);
  const over = endS <= batch.untilS;
  const toS = over ? endS : batch.untilS;
  const now = { ...followed(model, moved, batch, cursor, i, toS), offSinceS: off };
  if (!over) return stay(model, now, i);
  return moveOn(finishRep(standAt(model, batch, i, endS), { cueS: stage.cueS, endS }, now.own), i);
};

function withWheel(stage: Braking, { steering, untilS }: RigBatch, marks: TargetMarks): Braking {
  if (stage.pace === null) return stage;
  const span = { originS: stage.originS, untilS, brakeOffS: marks.brakeOff };
  return { ...stage, pace: followWheel(stage.pace, steering, span) };
}

/** Moments on the source's clock that decide when the rep is over. */
interface Ends {
  /** The target's brake off; infinite while its pace is not known. */
  readonly targetOffS: number;
  /** How long a brake that is held is watched. */
  readonly heldS: number;
  /** How long after the brake came off the target's brake off is waited for, at most. */
  readonly waitS: number;
}

function endsOf({ originS, pace }: Braking, { brakeOff }: TargetMarks): Ends {
  if (pace === null)
    return {
      targetOffS: originS + brakeOff,
      heldS: originS + brakeOff + NOT_RELEASED_S,
      waitS: Number.POSITIVE_INFINITY,
    };
  const targetOffS = pace.brakeOffAtS ?? Number.POSITIVE_INFINITY;
  const longestS = originS + brakeOff + LONGEST_WAIT_S;
  const heldS = Math.min(targetOffS + NOT_RELEASED_S, longestS);
  return { targetOffS, heldS, waitS: WHEEL_WAIT_S };
}

/**
 * When the rep is over: the brake is off, or it is held too long. A brake that comes off before the target's is
 * watched until the target ends, so that the record covers all that is scored; a wheel that never takes it there is
 * not waited for.
 */
function endOfRepS({ targetOffS, heldS, waitS }: Ends, offSinceS: number | null): number {
  if (offSinceS === null) return heldS;
  return Math.max(offSinceS, Math.min(targetOffS, offSinceS + waitS)) + AFTER_OFF_S;
}

/** The stage with the batch's samples up to `toS` drawn and compared with the target. */
function followed(
  model: DrillModel,
  stage: Braking,
  batch: RigBatch,
  from: number,
  to: number,
  toS: number,
): Braking {
  const { originS, own, pace } = stage;
  const { brake, steering } = batch;
  const liveError = addStretch(stage.liveError, model.setup.target, {
    track: brake,
    from,
    to,
    held: heldLevel(model, batch, from) ?? 0,
    startS: model.atS,
    endS: toS,
    originS,
    placeAt: pace && ((sinceS) => placeAt(pace, sinceS)),
  });
  const wheel = { from: indexAfter(steering, model.atS), to: indexAfter(steering, toS), originS };
  return {
    ...stage,
    liveError,
    own: {
      brake: appendOwn(own.brake, brake, { from, to, originS }, pace),
      steering: appendOwn(own.steering, steering, wheel, pace),
    },
  };
}
