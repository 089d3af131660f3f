import type { LiveZone } from '../../live/live-zone.ts';
import { valueAt } from '../live/lane-targets.ts';
import type { BlockGrid } from './block-grid.ts';

/** Where the car of the target is at each place of the grid, m from turn-in; beyond the slowest point it rolls on. */
export function gridPlacesM(
  { derived: { zone } }: LiveZone,
  { target, stepS }: BlockGrid,
): Float64Array {
  const { points, durationS, slowestM } = zone;
  const along = {
    placeM: Float64Array.from(points, ({ timeS }) => timeS),
    value: Float64Array.from(points, ({ sM }) => sM),
  };
  const slowestMps = points.at(-1)?.speedMps ?? 0;
  return target.map((_, i) => {
    const overS = i * stepS - durationS;
    return overS > 0 ? slowestM + overS * slowestMps : (valueAt(along, i * stepS) ?? slowestM);
  });
}
