import type { PlaceTrack } from '../../live/live-view.ts';
import type { DerivedTarget } from '../../target/derive/derive-target.ts';
import type { ZonePoint } from '../../target/derive/zone-point.ts';
import { DEFAULT_CORRIDOR } from '../../target/target-spec.ts';
import { degreesFromRadians } from '../../units.ts';

/** A derived target along the road, as the driver is shown it. */
export interface LaneTargets {
  readonly level: PlaceTrack;
  /** Half width of the corridor around it. */
  readonly corridorLevel: PlaceTrack;
  readonly steeringDeg: PlaceTrack;
  readonly speedMps: PlaceTrack;
}

export function laneTargets({ zone: { points } }: DerivedTarget): LaneTargets {
  const { floorLevel, share } = DEFAULT_CORRIDOR;
  const placeM = Float64Array.from(points, ({ sM }) => sM);
  const lane = (of: (point: ZonePoint) => number): PlaceTrack => ({
    placeM,
    value: Float64Array.from(points, of),
  });
  return {
    level: lane(({ level }) => level),
    corridorLevel: lane(({ level }) => Math.max(floorLevel, share * level)),
    steeringDeg: lane(({ steeringRad }) => degreesFromRadians(steeringRad)),
    speedMps: lane(({ speedMps }) => speedMps),
  };
}

/** The value at a place, linear between two points and held outside them; null for a track without points. */
export function valueAt({ placeM, value }: PlaceTrack, sM: number): number | null {
  const right = firstAfter(placeM, sM);
  const [before, after] = [value[right - 1], value[right]];
  if (before === undefined || after === undefined) return before ?? after ?? null;
  const [fromM, toM] = [placeM[right - 1] as number, placeM[right] as number];
  return before + ((after - before) * (sM - fromM)) / (toM - fromM);
}

/** Index of the first place beyond `sM`. */
function firstAfter(placeM: Float64Array, sM: number): number {
  let [low, high] = [0, placeM.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((placeM[middle] as number) <= sM) low = middle + 1;
    else high = middle;
  }
  return low;
}
