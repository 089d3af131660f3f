import type { RepRecord } from '../../../src/trace/rep-record.ts';

/** Reps made up from a known curve: nothing here comes from what is tested. */
export interface Made {
  /** Release later or earlier. */
  readonly timingS?: number;
  /** Of the release's length. */
  readonly rate?: number;
  readonly amount?: number;
  readonly startS?: number;
  readonly steering?: ((timeS: number) => number) | null;
  readonly noise?: () => number;
  readonly curve?: (timeS: number) => number;
}

export const CURVE = {
  riseS: 0.25,
  peak: 0.8,
  holdEndS: 0.6,
  offS: 2.1,
  exponent: 1.3,
} as const;

/** A push of least jerk, a plateau, a release by a power law. Seconds after the start of the rise. */
export function curveAt(timeS: number): number {
  const { riseS, peak, holdEndS, offS, exponent } = CURVE;
  if (timeS <= 0 || timeS >= offS) return 0;
  const u = timeS / riseS;
  if (u < 1) return peak * u ** 3 * (10 - 15 * u + 6 * u * u);
  if (timeS < holdEndS) return peak;
  return peak * (1 - (timeS - holdEndS) / (offS - holdEndS)) ** exponent;
}

/** The rep with its release moved, stretched and scaled as a driver's own errors do it. */
export function madeRep(made: Made = {}): RepRecord {
  const { timingS = 0, rate = 1, amount = 1, startS = 0, noise = () => 0, curve = curveAt } = made;
  const { riseS, holdEndS } = CURVE;
  const releaseS = holdEndS + timingS;
  const meant = (t: number): number => {
    if (t < riseS) return t;
    if (t >= releaseS) return holdEndS + (t - releaseS) / rate;
    return riseS + ((t - riseS) * (holdEndS - riseS)) / (releaseS - riseS);
  };
  return record((t) => amount * curve(meant(t)) + noise(), startS, made.steering ?? null);
}

/** Every millisecond from 0.6 s before the rise to 4 s after it. */
export function record(
  level: (timeS: number) => number,
  startS: number,
  steering: ((timeS: number) => number) | null,
): RepRecord {
  const timeS = Float64Array.from({ length: 4601 }, (_, i) => startS - 0.6 + i / 1000);
  const track = (f: (t: number) => number) => ({ timeS, value: timeS.map((t) => f(t - startS)) });
  return {
    brake: track((t) => Math.min(1, Math.max(0, level(t)))),
    throttle: null,
    clutch: null,
    steering: steering === null ? null : track(steering),
    buttons: [],
    gaps: [],
    brakeStepLevel: 0,
    endS: startS + 4,
  };
}

/** Park and Miller's generator, standard normal by Box and Muller. */
export function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}
