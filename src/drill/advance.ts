import type { RigBatch } from '../trace/rig-batch.ts';
import { advanceArming } from './advance-arming.ts';
import { advanceBraking } from './advance-braking.ts';
import { advanceCountdown } from './advance-countdown.ts';
import { advanceReady } from './advance-ready.ts';
import type { DrillModel } from './drill-model.ts';
import { shiftedGear } from './gear.ts';
import { advanceDriving } from './live/advance-driving.ts';
import { advanceRolling } from './live/advance-rolling.ts';
import { type Advance, indexAfter, moveOn, type Progress, standAt, stay } from './progress.ts';
import { recordBatch } from './recording.ts';
import { enterArming, enterSummary, isBlockOver, type Step } from './stages.ts';

/**
 * Works a batch through the stages of the rep, each up to the moment at which the next begins. All moments follow
 * from samples and from the clock, so that a rep is the same however its samples are cut into batches.
 *
 * @param health how the devices report now
 */
export function advance(before: DrillModel, batch: RigBatch, health: DrillModel['health']): Step {
  let progress = advanceStage(withBatch(before, batch), batch, 0);
  const effects = [...progress.effects];
  while (!progress.settled) {
    progress = advanceStage(progress.model, batch, progress.cursor);
    effects.push(...progress.effects);
  }
  const { model, stage } = progress;
  // All that is new in one copy: at every batch each costs as much as what it copies.
  const now: DrillModel = {
    ...model,
    stage,
    atS: batch.untilS,
    levels: lastLevels(before, batch),
    gear: shiftedGear(model.gear, batch.buttons),
    health,
    dropped: batch.dropped,
  };
  return [now, effects];
}

function advanceStage(model: DrillModel, batch: RigBatch, cursor: number): Progress {
  const { stage } = model;
  switch (stage.kind) {
    case 'arming':
      return advanceArming(model, stage, batch, cursor);
    case 'countdown':
      return advanceCountdown(model, stage, batch, cursor);
    case 'ready':
      return advanceReady(model, stage, batch, cursor);
    case 'braking':
      return advanceBraking(model, stage, batch, cursor);
    case 'rolling':
      return advanceRolling(model, stage, batch, cursor);
    case 'driving':
      return advanceDriving(model, stage, batch, cursor);
    case 'after':
      return advanceAfter(model, stage, batch, cursor);
    case 'paused':
    case 'device-lost':
    case 'summary':
      return stay(model, stage, batch.brake.timeS.length);
  }
}

/** A note that is being typed is waited for. */
const advanceAfter: Advance<'after'> = (model, stage, batch, cursor) => {
  if (model.note !== null) return stay(model, stage, batch.brake.timeS.length);
  const over = isBlockOver(model);
  const untilS = Math.max(model.atS, over ? stage.restFromS : stage.nextS);
  if (untilS > batch.untilS || (over && model.unscored.length > 0))
    return stay(model, stage, batch.brake.timeS.length);
  const next = Math.max(cursor, indexAfter(batch.brake, untilS));
  const at = standAt(model, batch, next, untilS);
  return moveOn([over ? enterSummary(at, untilS) : enterArming(at, untilS), []], next);
};

function withBatch(model: DrillModel, batch: RigBatch): DrillModel {
  const { recording } = model;
  return recording === null ? model : { ...model, recording: recordBatch(recording, batch) };
}

function lastLevels({ levels }: DrillModel, batch: RigBatch): DrillModel['levels'] {
  return {
    brake: batch.brake.value.at(-1) ?? levels.brake,
    throttle: batch.throttle.value.at(-1) ?? levels.throttle,
    clutch: batch.clutch.value.at(-1) ?? levels.clutch,
    steering: batch.steering.value.at(-1) ?? levels.steering,
  };
}
