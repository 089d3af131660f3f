import type { HeatState } from '../../car/heat-state.ts';
import { driveRecord } from '../../live/drive-record.ts';
import { heatAfterRep } from '../../live/heat-after-rep.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import type { DrillModel } from '../drill-model.ts';

/**
 * How hot the brakes are when the next rep begins: in a stint by what this one did to them, else as they were. A void
 * rep does not count, neither for the driver nor for the brakes.
 */
export function heatAfter({ setup, live, heat }: DrillModel, record: RepRecord): HeatState | null {
  const gapS = setup.live?.stintS ?? null;
  if (live === null || gapS === null) return heat;
  return heatAfterRep(live.zone, driveRecord(live.zone, record), gapS);
}
