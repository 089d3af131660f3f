/** A tabulated function of one variable, constant outside its ends, evaluated in constant time. */
export interface Curve {
  readonly start: number;
  readonly end: number;
  at(x: number): number;
}

/** What the curve runs over. */
export type TargetDomain =
  /** Seconds after the start of the rise. */
  | 'time'
  /** Metres to the slowest point: positive before it, falling to 0. */
  | 'distance';

/**
 * The target's named key points, in the domain's own unit. They are the coach's, not measured off the curve; the
 * same estimator then finds them on target and rep, and only differences are reported.
 */
export interface TargetMarks {
  /** Start of the rise. */
  readonly rise: number;
  readonly peak: number;
  /** Where the level starts to leave the plateau, or the straight-line bleed on a car with downforce. */
  readonly startOfRelease: number;
  readonly turnIn: number | null;
  readonly apex: number | null;
  /** Start of the last tenth of the plateau. */
  readonly finalRelease: number;
  readonly brakeOff: number;
}

export interface GearEvent {
  readonly at: number;
  readonly gear: number;
}

/** What full scale (level 1) stands for in the car, where the coach or the car file says so. */
export interface FullScale {
  readonly pedalForceN: number | null;
  readonly pressureBar: number | null;
}

/** What turns a target over distance into one over time. */
export interface TargetSpeeds {
  /** At the start of the rise. */
  readonly entryMps: number;
  /** At brake off and from there to the slowest point. */
  readonly slowestMps: number;
}

/** The brake curve to follow. Immutable; a change of the file is a new `version`. */
export interface Target {
  /** File name without its ending, for example `hairpin`. */
  readonly id: string;
  /** Hash of everything that decides the score (curve, marks, corridor); scores compare only within one version. */
  readonly version: string;
  readonly name: string;
  readonly cornerType: string;
  readonly domain: TargetDomain;
  /** Null in the time domain unless the file was written over distance. */
  readonly speeds: TargetSpeeds | null;
  /** Level 0..1 over the domain. */
  readonly level: Curve;
  /** Degrees at the wheel, left positive. */
  readonly steering: Curve | null;
  readonly gears: readonly GearEvent[];
  readonly marks: TargetMarks;
  /** Highest level of the curve. */
  readonly peakLevel: number;
  /** Half width of the corridor at x, as a level: max(0.015, 5 % of the level) unless the coach sets it. */
  corridorAt(x: number): number;
  readonly fullScale: FullScale;
  /** One or two sentences of the coach for the driver. */
  readonly advice: string | null;
  /** What it was learned from, for example `8 reps of hairpin, 2026-11-25`; null where it was not. */
  readonly learnedFrom: string | null;
}
