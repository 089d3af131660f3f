import type { DrillModel } from '../drill-model.ts';
import type { PlanView } from '../drill-view.ts';
import { lapViewOf } from '../event/lap-view.ts';
import { betweenBlocks, planTitle } from './plan-words.ts';

/** Where the practice is in its plan; null without one. */
export function planViewOf(model: DrillModel): PlanView | null {
  const { setup, stage } = model;
  const title = planTitle(model);
  if (setup.plan === null || title === null) return null;
  const { name } = setup.plan;
  const lap = lapViewOf(model);
  if (stage.kind !== 'summary') return { name, title, notes: [], summaries: [], lap };
  return { name, title, notes: betweenBlocks(model), summaries: stage.byTarget, lap };
}
