import type { Target } from '../target/target.ts';
import type { DrillModel } from './drill-model.ts';

/** What the rep under way, or the last one, is driven against. */
export function targetOf({ live, setup }: Pick<DrillModel, 'live' | 'setup'>): Target {
  return live?.zone.target ?? setup.target;
}
