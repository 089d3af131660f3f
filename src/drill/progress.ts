import type { RigBatch } from '../trace/rig-batch.ts';
import type { Track } from '../trace/track.ts';
import type { DrillEffect } from './drill-message.ts';
import type { DrillModel, Stage } from './drill-model.ts';
import type { Step } from './stages.ts';

/** How far a batch has been worked through: `cursor` is the first brake sample that was not looked at. */
export interface Progress {
  readonly model: DrillModel;
  /** What takes the place of the model's own. */
  readonly stage: Stage;
  readonly effects: readonly DrillEffect[];
  readonly cursor: number;
  /** True when the stage wants nothing more of this batch. */
  readonly settled: boolean;
}

/** Works one stage through a batch, up to where the next stage begins. */
export type Advance<K extends Stage['kind']> = (
  model: DrillModel,
  stage: Extract<Stage, { kind: K }>,
  batch: RigBatch,
  cursor: number,
) => Progress;

/** The stage goes on after this batch. */
export function stay(model: DrillModel, stage: Stage, cursor: number): Progress {
  return { model, stage, effects: [], cursor, settled: true };
}

/** The next stage begins within this batch; the samples up to `cursor` are behind it. */
export function moveOn([model, effects]: Step, cursor: number): Progress {
  return { model, stage: model.stage, effects, cursor, settled: false };
}

/** The model at a moment within a batch: the brake stands where the last sample left it. */
export function standAt(
  model: DrillModel,
  batch: RigBatch,
  cursor: number,
  atS: number,
): DrillModel {
  const brake = heldLevel(model, batch, cursor);
  return { ...model, atS, levels: { ...model.levels, brake } };
}

/** The brake's level just before a sample. */
export function heldLevel(model: DrillModel, batch: RigBatch, cursor: number): number | null {
  return cursor > 0 ? batch.brake.value[cursor - 1]! : model.levels.brake;
}

/** Index of the first sample later than `timeS`. */
export function indexAfter({ timeS }: Track, atS: number): number {
  let low = 0;
  let high = timeS.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timeS[middle]! <= atS) low = middle + 1;
    else high = middle;
  }
  return low;
}
