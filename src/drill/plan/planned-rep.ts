import type { DrillModel } from '../drill-model.ts';
import { targetOnsetS } from '../onset-search.ts';
import { recentOutcomes } from './plan-progress.ts';
import type { PlannedPractice, PracticeZone } from './planned-practice.ts';
import type { PlannedRep, PracticeBlock } from './practice-blocks.ts';
import { variedTarget } from './varied-target.ts';

/** The block of the plan that is driven, or was driven last; null in a drill without a plan. */
export function plannedBlock({
  setup: { plan },
  block,
}: Pick<DrillModel, 'setup' | 'block'>): PracticeBlock<PracticeZone> | null {
  return plan === null ? null : plan.blocks[block.number - 1]!;
}

/** The rep that is driven, or the block's last one; null in a drill without a plan. */
export function plannedRep(
  model: Pick<DrillModel, 'setup' | 'block'>,
): PlannedRep<PracticeZone> | null {
  const planned = plannedBlock(model);
  return planned === null
    ? null
    : planned.reps[Math.min(model.block.place, planned.reps.length) - 1]!;
}

/**
 * The drill with the plan's next rep set up: target, live car, and how often it was driven. A drill without a plan stays
 * as it is. Brakes stay hot from one zone of a stint to the next as long as the car is the same.
 */
export function setUpPlannedRep(model: DrillModel): DrillModel {
  const rep = plannedRep(model);
  if (rep === null) return model;
  const { setup, plan } = model;
  const { zone, variation } = rep;
  const target = variation === null ? zone.target : variedTarget(zone.target, variation);
  const sameCar = setup.live?.car.id === zone.live?.plan.car.id;
  return {
    ...model,
    setup: { ...setup, target, live: zone.live?.plan ?? null },
    paced: zone.paced,
    targetOnsetS: target === setup.target ? model.targetOnsetS : targetOnsetS(target),
    live: zone.live?.first ?? null,
    heat: sameCar ? model.heat : null,
    recent: plan === null ? model.recent : recentOutcomes(plan, zone),
  };
}

/** The target on whose grid the rep's curve can lie: that of its zone, whatever was varied. */
export function gridTarget(model: DrillModel): DrillModel['setup']['target'] {
  return plannedRep(model)?.zone.target ?? model.setup.target;
}

/** False once the plan's blocks are all driven, or the leg has had enough. Without a plan there is always another. */
export function hasNextBlock({ setup: { plan }, block, plan: progress }: DrillModel): boolean {
  if (plan === null || progress === null) return true;
  return block.number < plan.blocks.length && !isEnough(plan, progress.hardReps);
}

export function isEnough({ hardReps: { most } }: PlannedPractice, hardReps: number): boolean {
  return hardReps >= most;
}
