import type { DrillModel } from '../drill-model.ts';
import type { RepTiming } from '../drill-setup.ts';
import { plannedRep } from '../plan/planned-rep.ts';
import { roadTiming } from './road-timing.ts';

/**
 * How long the result of the rep under way stands alone and how long the rest after it is: the drill's own, in the laps
 * of an event as long as the road to the next zone.
 *
 * @param holdS how long the result is held back; 0 for a void rep, which has none
 */
export function timingAfter(
  model: Pick<DrillModel, 'setup' | 'block'>,
  holdS: number,
): Pick<RepTiming, 'showS' | 'restS'> {
  const { timing } = model.setup;
  const gapS = plannedRep(model)?.zone.gapS;
  return gapS === undefined ? timing : roadTiming(gapS, holdS, timing);
}
