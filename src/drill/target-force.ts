import type { Target } from '../target/target.ts';
import type { RigBatch } from '../trace/rig-batch.ts';

/** How a target is drilled on a rig that reads newtons. */
type TargetForce = 'none told' | 'reached' | 'too much';

type Forced = Pick<Target, 'fullScale' | 'peakLevel'>;

/**
 * Whether a target is drilled at the force that it stands for: where the rig reads newtons, the target says its force,
 * and its peak lies within the driver's own full scale, which is the most that they want to press.
 *
 * @param ownFullScaleN null for a rig that was never put under known loads
 */
export function targetForce(
  ownFullScaleN: number | null,
  { fullScale: { pedalForceN }, peakLevel }: Forced,
): TargetForce {
  if (ownFullScaleN === null || pedalForceN === null) return 'none told';
  return peakLevel * pedalForceN <= ownFullScaleN ? 'reached' : 'too much';
}

/**
 * What a share of the driver's own full scale is as a level of the target: the force over what level 1 stands for where
 * it is drilled at its force, else the share itself. The force of the pedal at rest is taken as none. Brakes that get
 * hot and late calls change nothing: what decides is the target at the start.
 */
export function levelPerShare({
  ownFullScaleN,
  target,
}: {
  readonly ownFullScaleN: number | null;
  readonly target: Forced;
}): number {
  if (targetForce(ownFullScaleN, target) !== 'reached') return 1;
  return ownFullScaleN! / target.fullScale.pedalForceN!;
}

/** The batch with its brake in levels of the target. */
export function inTargetLevels(batch: RigBatch, perShare: number): RigBatch {
  if (perShare === 1) return batch;
  const value = batch.brake.value.map((share) => Math.min(1, perShare * share));
  return { ...batch, brake: { ...batch.brake, value } };
}
