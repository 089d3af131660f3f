import type { DrillModel } from '../drill-model.ts';
import { plannedBlock } from '../plan/planned-rep.ts';

/** What the laps of an event add to the view of a plan. */
export interface LapView {
  /** The zone that the road leads to now; null for none. */
  readonly roadTo: string | null;
}

/** Null in any other drill. */
export function lapViewOf(model: DrillModel): LapView | null {
  const { setup, block, stage } = model;
  if (setup.plan?.lapZones === undefined) return null;
  const next = plannedBlock(model)!.reps[block.place - 1];
  return { roadTo: stage.kind === 'after' && next !== undefined ? next.zone.target.name : null };
}
