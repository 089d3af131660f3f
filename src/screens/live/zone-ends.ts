import type { LiveView } from '../../live/live-view.ts';
import type { PlotEnds } from '../plot-scale.ts';
import { remembered } from '../remembered.ts';

/** Full scale of the picture is 110 % of the target's peak, as in the drill over time. */
const HEADROOM = 1.1;
/** Road before the target's brake point and after the slowest point. */
const BEFORE_SHARE = 0.12;
const LEAST_BEFORE_M = 15;
const AFTER_SHARE = 0.06;
/** What the steering lane shows at least, degrees at the wheel. */
const LEAST_ANGLE_DEG = 20;

/** Levels over the road from before the brake point to behind the slowest point; it stands still. */
export function levelEnds({ fromM, toM, level }: LiveView, zoom = 1): PlotEnds {
  const peak = level.target === null ? 1 : largest(level.target.value);
  return { ...road(fromM, toM), bottom: 0, top: (HEADROOM * (peak > 0 ? peak : 1)) / zoom };
}

/** Angles over the same road: room for the target's to both sides, or the own without it, and for a quarter more. */
export function steeringEnds({ fromM, toM, steeringDeg }: LiveView): PlotEnds {
  const angles = (steeringDeg.target ?? steeringDeg.own)?.value ?? new Float64Array(0);
  const left = largest(angles);
  const right = smallest(angles);
  const bottom = right < -1 ? 1.25 * right : 0;
  const top = left > 1 || bottom === 0 ? Math.max(LEAST_ANGLE_DEG, 1.25 * left) : 0;
  return { ...road(fromM, toM), bottom, top };
}

function road(fromM: number, toM: number): { readonly from: number; readonly to: number } {
  const length = toM - fromM;
  return {
    from: fromM - Math.max(LEAST_BEFORE_M, BEFORE_SHARE * length),
    to: toM + AFTER_SHARE * length,
  };
}

/** The largest value, 0 where none is above. */
const largest = remembered((values: Float64Array): number =>
  values.reduce((most, value) => Math.max(most, value), 0),
);

/** The smallest value, 0 where none is below. */
const smallest = remembered((values: Float64Array): number =>
  values.reduce((least, value) => Math.min(least, value), 0),
);
