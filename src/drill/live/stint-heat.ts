import { cooledFor, type HeatState, heatedBy, startHeat } from '../../car/heat-state.ts';
import type { DrillModel } from '../drill-model.ts';
import type { RepDrive } from './rep-drive.ts';

/** How hot the brakes are after a rep, where they are not cooled down before the next one. */
export function heatAfter(
  { setup, live, heat }: DrillModel,
  drive: RepDrive | null,
): HeatState | null {
  const gapS = setup.live?.stintS ?? null;
  if (live === null || drive === null || gapS === null) return heat;
  const { car, corner } = live.zone;
  const hot = heatedBy(car, startHeat(car), drive.car.workJ);
  return cooledFor(car, hot, { durationS: gapS, speedMps: corner.approachSpeedMps });
}
