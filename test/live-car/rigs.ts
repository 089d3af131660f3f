import type { Car } from '../../src/car/car.ts';
import type { Corner } from '../../src/corner/corner.ts';
import { liveZone } from '../../src/live/build-live-zone.ts';
import type { LiveControls, LiveZone } from '../../src/live/live-zone.ts';
import { deriveTarget } from '../../src/target/derive/derive-target.ts';
import type { ZonePoint } from '../../src/target/derive/zone-point.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import type { ButtonEvent } from '../../src/trace/rig-batch.ts';
import type { Track } from '../../src/trace/track.ts';

/** A rig with brake pedal alone, and one with everything. */
export const PEDAL_ONLY: LiveControls = {
  steering: false,
  throttle: false,
  clutch: false,
  paddles: false,
};
export const WHOLE_RIG: LiveControls = {
  steering: true,
  throttle: true,
  clutch: true,
  paddles: true,
};

export function zoneOf(car: Car, corner: Corner, controls: LiveControls = PEDAL_ONLY): LiveZone {
  const derived = deriveTarget(car, corner);
  return liveZone({ derived, advice: null, controls, call: null });
}

/** A function of time sampled once per millisecond. */
export function sampled(f: (timeS: number) => number, fromS: number, toS: number): Track {
  const count = Math.round((toS - fromS) * 1000) + 1;
  const timeS = Float64Array.from({ length: count }, (_, i) => fromS + i / 1000);
  return { timeS, value: timeS.map(f) };
}

export interface Driven {
  readonly brake: (timeS: number) => number;
  readonly steering?: (timeS: number) => number;
  readonly throttle?: (timeS: number) => number;
  readonly clutch?: (timeS: number) => number;
  readonly buttons?: readonly ButtonEvent[];
  readonly endS: number;
}

/** The record of a rep driven by functions of the time from the cue. */
export function recordOf(driven: Driven): RepRecord {
  const track = (f: ((timeS: number) => number) | undefined): Track | null =>
    f === undefined ? null : sampled(f, -3.3, driven.endS);
  return {
    brake: sampled(driven.brake, -3.3, driven.endS),
    throttle: track(driven.throttle),
    clutch: track(driven.clutch),
    steering: track(driven.steering),
    buttons: driven.buttons ?? [],
    gaps: [],
    brakeStepLevel: 0,
    endS: driven.endS,
  };
}

export function paddle(timeS: number, action: 'downshift' | 'upshift' = 'downshift'): ButtonEvent {
  return { timeS, control: 'paddle', pressed: true, action };
}

/** A column of a derived zone against its time, linear between its points and constant outside. */
export function pointsOver(
  points: readonly ZonePoint[],
  value: (point: ZonePoint) => number,
): (timeS: number) => number {
  return (timeS) => {
    const after = firstAfter(points, timeS);
    if (after === points.length) return value(points[points.length - 1] as ZonePoint);
    const [b, a] = [points[after] as ZonePoint, points[after - 1]];
    if (a === undefined) return timeS < b.timeS ? 0 : value(b);
    return value(a) + ((value(b) - value(a)) * (timeS - a.timeS)) / (b.timeS - a.timeS);
  };
}

/** Place of the first point later than a time, by halving: it is asked for at every sample of hundreds of zones. */
function firstAfter(points: readonly ZonePoint[], timeS: number): number {
  let [low, high] = [0, points.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((points[middle] as ZonePoint).timeS > timeS) high = middle;
    else low = middle + 1;
  }
  return low;
}
