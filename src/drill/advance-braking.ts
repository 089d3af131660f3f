import type { TargetMarks } from '../target/target.ts';
import type { RigBatch } from '../trace/rig-batch.ts';
import type { DrillModel, Stage } from './drill-model.ts';
import { addStretch } from './live-error.ts';
import { type Advance, heldLevel, indexAfter, moveOn, standAt, stay } from './progress.ts';
import { finishRep } from './rep-end.ts';
import { appendSamples } from './sample-log.ts';

/** Off for 0.3 s is off for good; another 0.3 s is recorded, so that no filter sees the edge. */
const AFTER_OFF_S = 0.6;
/** How much longer than the target a brake that is not released is watched. */
const NOT_RELEASED_S = 1;

type Braking = Extract<Stage, { kind: 'braking' }>;

export const advanceBraking: Advance<'braking'> = (model, stage, batch, cursor) => {
  const { timeS, value } = batch.brake;
  const { marks } = model.setup.target;
  let off = stage.offSinceS;
  let i = cursor;
  for (; i < timeS.length && timeS[i]! <= endOfRepS(stage.originS, off, marks); i++)
    off = value[i]! > stage.offLevel ? null : (off ?? timeS[i]!);
  const endS = endOfRepS(stage.originS, off, marks);
  const over = endS <= batch.untilS;
  const toS = over ? endS : batch.untilS;
  const now = { ...followed(model, stage, batch, cursor, i, toS), offSinceS: off };
  if (!over) return stay(model, now, i);
  return moveOn(finishRep(standAt(model, batch, i, endS), { cueS: stage.cueS, endS }, now.own), i);
};

/**
 * When the rep is over: the brake is off, or it is held too long. A brake that comes off before the target's is
 * watched until the target ends, so that the record covers all that is scored.
 */
function endOfRepS(originS: number, offSinceS: number | null, { brakeOff }: TargetMarks): number {
  if (offSinceS === null) return originS + brakeOff + NOT_RELEASED_S;
  return Math.max(offSinceS, originS + brakeOff) + AFTER_OFF_S;
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
  const { originS, own } = stage;
  const { brake, steering } = batch;
  const liveError = addStretch(stage.liveError, model.setup.target, {
    track: brake,
    from,
    to,
    held: heldLevel(model, batch, from) ?? 0,
    startS: model.atS,
    endS: toS,
    originS,
  });
  const wheel = [indexAfter(steering, model.atS), indexAfter(steering, toS)] as const;
  return {
    ...stage,
    liveError,
    own: {
      brake: appendSamples(own.brake, brake, from, to, originS),
      steering: appendSamples(own.steering, steering, ...wheel, originS),
    },
  };
}
