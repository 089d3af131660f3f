import type { RepRecord } from '../../src/trace/rep-record.ts';
import type { Track } from '../../src/trace/track.ts';

/** A small seeded generator (a linear congruential one, Numerical Recipes constants), uniform in 0..1. */
export function uniform(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Standard normal numbers by Box and Muller. */
export function normal(next: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
}

export interface SensorNoise {
  readonly bits: number;
  /** Standard deviation in counts. */
  readonly counts: number;
}

/** Arrival stamps of a device that answers every `periodS`, late by a normal jitter and now and then by a burst. */
export function stamps(next: () => number, periodS: number, endS: number): Float64Array {
  const gauss = normal(next);
  const times: number[] = [];
  for (let i = 0; i * periodS < endS; i++) {
    const late = Math.abs(gauss()) * 40e-6 + (next() < 0.002 ? 2e-3 * next() : 0);
    times.push(Math.max(times.at(-1) ?? 0, i * periodS + late));
  }
  return Float64Array.from(times);
}

/** What a sensor of so many bits makes of a level, clamped to 0..1 as a calibration does. */
export function sense(
  next: () => number,
  timeS: Float64Array,
  level: (timeS: number) => number,
  noise: SensorNoise,
): Track {
  const gauss = normal(next);
  const full = 2 ** noise.bits - 1;
  const value = timeS.map((t) => {
    const counts = Math.round(level(t) * full + gauss() * noise.counts);
    return Math.min(full, Math.max(0, counts)) / full;
  });
  return { timeS, value };
}

/** Five seconds of one braking zone: lift, hit, bleed, release into the corner, blips of clutch, steering in. */
export function fiveSecondRep(seed: number, noise: SensorNoise): RepRecord {
  const next = uniform(seed);
  const pedals = stamps(next, 1e-3, 5);
  const wheel = stamps(next, 2e-3, 5);
  const tremor = (t: number): number => 1 + 0.02 * Math.sin(2 * Math.PI * 9 * t + seed);
  const brake = sense(next, pedals, (t) => brakeLevel(t) * tremor(t), noise);
  const throttle = sense(next, pedals, (t) => (t < 0.8 ? 0.97 : 0.002), noise);
  const clutch = sense(next, pedals, (t) => clutchLevel(t), noise);
  const steering = sense(next, wheel, (t) => 0.5 + 0.15 * rise(t, 2, 1.5), { bits: 16, counts: 2 });
  return {
    brake,
    throttle,
    clutch,
    steering: { timeS: wheel, value: steering.value.map((share) => (share - 0.5) * 900) },
    buttons: [
      { timeS: 1.7123456, control: 'left paddle', pressed: true, action: 'downshift' },
      { timeS: 1.8, control: 'left paddle', pressed: false, action: 'downshift' },
    ],
    gaps: [{ fromS: 4.9001234, toS: 4.9609876 }],
    brakeStepLevel: 1 / (2 ** noise.bits - 1),
    endS: 5.00004,
  };
}

function rise(t: number, from: number, length: number): number {
  const u = Math.min(1, Math.max(0, (t - from) / length));
  return u * u * (3 - 2 * u);
}

function brakeLevel(t: number): number {
  return 0.8 * rise(t, 0.9, 0.15) * (1 - rise(t, 1.6, 2.2)) * (1 - 0.1 * rise(t, 1, 0.6));
}

function clutchLevel(t: number): number {
  return Math.max(0.002, rise(t, 1.7, 0.1) - rise(t, 1.85, 0.15));
}
