import type { Target, TargetMarks } from '../../src/target/target.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import { brakeAlone } from '../trace/brake-alone.ts';

/** Curves and records written out by hand, sharing nothing with the code under test. Levels 0..1, seconds. */
export type Curve = (timeS: number) => number;

export const minJerk: Curve = (u) => {
  const x = Math.min(1, Math.max(0, u));
  return x ** 3 * (10 - 15 * x + 6 * x * x);
};

export interface BrakingShape {
  readonly peak: number;
  readonly riseS: number;
  readonly holdS: number;
  readonly releaseS: number;
  /** Share of the plateau left, over the share of the release that has passed. */
  readonly fall: Curve;
}

export const FALLS: Record<'convex' | 'scurve' | 'straight' | 'concave', Curve> = {
  convex: (u) => (1 - u) ** 1.6,
  scurve: (u) => 1 - minJerk(u),
  straight: (u) => 1 - u,
  concave: (u) => 1 - u * u,
};

export const SHAPE: BrakingShape = {
  peak: 0.8,
  riseS: 0.15,
  holdS: 0.15,
  releaseS: 1.5,
  fall: FALLS.convex,
};

/** Rise at 0, hold, release. */
export function braking({ peak, riseS, holdS, releaseS, fall }: BrakingShape): Curve {
  const mark = riseS + holdS;
  return (timeS) => {
    if (timeS < mark) return peak * minJerk(timeS / riseS);
    return peak * fall(Math.min(1, (timeS - mark) / releaseS));
  };
}

export function marksOf({ riseS, holdS, releaseS }: BrakingShape): TargetMarks {
  const startOfRelease = riseS + holdS;
  const brakeOff = startOfRelease + releaseS;
  return {
    rise: 0,
    peak: riseS,
    startOfRelease,
    turnIn: null,
    apex: null,
    finalRelease: brakeOff - 0.2 * releaseS,
    brakeOff,
  };
}

export function targetOf(level: Curve, marks: TargetMarks, peakLevel: number): Target {
  return {
    id: 'test',
    version: '1',
    name: 'Test',
    cornerType: 'test',
    domain: 'time',
    level: { start: marks.rise, end: marks.brakeOff, at: level },
    steering: null,
    gears: [],
    speeds: null,
    marks,
    peakLevel,
    corridorAt: (timeS) => Math.max(0.015, 0.05 * level(timeS)),
    fullScale: { pedalForceN: null, pressureBar: null },
    advice: null,
    learnedFrom: null,
  };
}

export function shapeTarget(shape: BrakingShape): Target {
  return targetOf(braking(shape), marksOf(shape), shape.peak);
}

export interface Sampling {
  /** Curve time of the first sample. */
  readonly fromS: number;
  readonly toS: number;
  readonly rateHz: number;
  /** Record time of the first sample. */
  readonly startS: number;
}

/** A record of nothing but the brake, sampled evenly. */
export function record(level: Curve, sampling: Partial<Sampling> = {}): RepRecord {
  const { fromS = -0.3, toS = 2.5, rateHz = 1000 } = sampling;
  const startS = sampling.startS ?? fromS;
  const count = Math.round((toS - fromS) * rateHz);
  const timeS = Float64Array.from({ length: count }, (_, i) => startS + i / rateHz);
  const value = Float64Array.from({ length: count }, (_, i) => level(fromS + i / rateHz));
  return brakeAlone(timeS, value);
}
