import { driveRecord } from '../../live/drive-record.ts';
import type { SlowerWay } from '../../live/follow-law.ts';
import { followedTarget } from '../../live/followed-target.ts';
import type { LiveZone } from '../../live/live-zone.ts';
import { stepAtPlace } from '../../live/run-steps.ts';
import type { RepScore } from '../../score/rep-score.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import type { BlockGrid, Stretch } from './block-grid.ts';
import { gridPlacesM } from './grid-places.ts';

/** All that is right for a car slower than the target; a rep is held against the one it is closest to, as in its score. */
const WAYS: readonly SlowerWay[] = ['ratio', 'place', 'speed'];

/**
 * A rep of the live car on the grid of its target: as far from the target as the foot was, at the same place, from what
 * the grip allowed at the speed the car really had. A car that arrives faster is through sooner; its level laid over
 * the target by time would be an error of the speed, not of the foot.
 */
export function liveRepCurve(
  record: RepRecord,
  { keyPoints }: Pick<RepScore, 'keyPoints'>,
  zone: LiveZone,
  grid: BlockGrid,
): Float64Array {
  const run = driveRecord(zone, record);
  const riseS = keyPoints.onsetS - (grid.onsetS - grid.fromS);
  const last = run.columns.level.length - 1;
  const steps = Array.from(gridPlacesM(zone, grid), (sM) => stepAtPlace(run, sM) ?? last);
  const curves = WAYS.map((way) => {
    const { level } = followedTarget(zone, run, riseS, way);
    return grid.target.map((target, i) => {
      const step = steps[i]!;
      return target + run.columns.level[step]! - level[step]!;
    });
  });
  return curves.reduce((best, other) =>
    distance(other, grid.target, grid.release) < distance(best, grid.target, grid.release)
      ? other
      : best,
  );
}

function distance(a: Float64Array, b: Float64Array, { from, to }: Stretch): number {
  let sum = 0;
  for (let i = from; i < to; i++) sum += Math.abs(a[i]! - b[i]!);
  return sum;
}
