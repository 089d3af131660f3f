import type { RepRecord } from '../trace/rep-record.ts';
import { resample } from '../trace/resample.ts';
import type { Track } from '../trace/track.ts';
import { liftToHit, PRESSED_LEVEL } from './lift-to-hit.ts';
import { quantile } from './quantile.ts';
import type { KeyPoints, SideMeasures } from './rep-score.ts';
import type { RepSignal } from './rep-signal.ts';
import { RATE_HZ } from './scoring-filter.ts';
import { rippleAround } from './shift-ripple.ts';
import { halfSteering } from './steering-lag.ts';

const RESTING_S = 0.5;

/**
 * What the rig offers beside the brake trace.
 *
 * @param riseS record time at which the rise began, once the delay of the onset estimator is taken off; null for a
 * rep without braking.
 */
export function sideMeasures(
  record: RepRecord,
  rep: RepSignal,
  keys: KeyPoints | null,
  riseS: number | null,
): SideMeasures {
  return {
    startErrorS: riseS,
    liftToHitS: riseS === null ? null : known(record.throttle, (t) => liftToHit(t, riseS)),
    overlapS: known(record.throttle, (throttle) => overlap(rep, throttle)),
    restingLevel: restingLevel(rep),
    shiftRippleLevel: keys === null ? null : shiftRipple(record, rep, keys),
    steeringLagS: keys === null ? null : known(record.steering, (s) => steeringLag(s, keys)),
  };
}

/** The measure of a track, null for a role that is not there or never said anything. */
function known<T>(track: Track | null, measure: (track: Track) => T): T | null {
  return track === null || track.timeS.length === 0 ? null : measure(track);
}

function overlap(rep: RepSignal, throttle: Track): number {
  const open = resample(throttle, rep.startS, rep.raw.length, RATE_HZ);
  const both = rep.raw.filter((level, i) => level > PRESSED_LEVEL && open[i]! > PRESSED_LEVEL);
  return both.length / RATE_HZ;
}

function restingLevel(rep: RepSignal): number {
  const end = rep.onset ?? rep.raw.length;
  const before = rep.raw.subarray(Math.max(0, end - RESTING_S * RATE_HZ), end);
  return quantile(before, 0.5) ?? rep.threshold.restingLevel;
}

function shiftRipple(record: RepRecord, rep: RepSignal, keys: KeyPoints): number | null {
  const endS = keys.brakeOffS ?? record.endS;
  const ripples = record.buttons
    .filter(({ pressed, action }) => pressed && (action === 'upshift' || action === 'downshift'))
    .filter(({ timeS }) => timeS >= keys.onsetS && timeS <= endS)
    .map(({ timeS }) => rippleAround(rep.levels, Math.round((timeS - rep.startS) * RATE_HZ)));
  return ripples.length === 0 ? null : Math.max(...ripples);
}

function steeringLag(steering: Track, keys: KeyPoints): number | null {
  const turned = halfSteering(steering, keys.onsetS);
  return turned === null || keys.halfReleaseS === null ? null : turned - keys.halfReleaseS;
}
