import type { Knot } from '../curve/monotone-cubic.ts';
import type { ReleaseShape } from './release-shape.ts';
import type { RiseShape } from './rise-shape.ts';
import type { RiseSqueeze } from './rise-squeeze.ts';
import type { FullScale, GearEvent, TargetSpeeds } from './target.ts';

/** Where the run of a target lies on its domain's axis. */
export type TargetAxis =
  | { readonly domain: 'time' }
  | {
      readonly domain: 'distance';
      /** Metres to the slowest point at which the rise starts. */
      readonly brakePointM: number;
      readonly speeds: TargetSpeeds;
    };

/** The level phase by phase. Lengths are seconds or metres, as the axis says; levels 0..1. */
export interface LevelPhases {
  readonly rise: {
    readonly length: number;
    readonly shape: RiseShape;
    /** Absent where one push goes all the way. */
    readonly squeeze?: RiseSqueeze;
  };
  readonly peakLevel: number;
  /** Length of the plateau at the peak. */
  readonly hold: number;
  /** A straight line down from the peak before the start of release, on a car with downforce. */
  readonly bleed: { readonly length: number; readonly toLevel: number } | null;
  readonly release: { readonly length: number; readonly shape: ReleaseShape };
}

/** Degrees at the wheel, left positive. */
export type SteeringSpec =
  /** From straight ahead at turn-in to this angle at the apex. */
  | { readonly kind: 'turn'; readonly angleDeg: number; readonly shape: RiseShape }
  /** Monotone cubic; `x` in the domain's unit, ascending. */
  | { readonly kind: 'knots'; readonly knots: readonly Knot[] };

/** Half width: the largest of a level, a share of the target's level, and what the knots say, if there are any. */
export interface CorridorSpec {
  readonly floorLevel: number;
  readonly share: number;
  /** Half widths as levels, joined by a monotone cubic; `x` in the domain's unit, ascending. */
  readonly knots?: readonly Knot[];
}

/**
 * A share of the level, because the spread of a force grows with the force (Slifkin and Newell, J. Exp. Psychol.
 * Hum. Percept. Perform. 25 (1999) 837-851), and a floor, because no leg holds a light force much closer.
 */
export const DEFAULT_CORRIDOR: CorridorSpec = { floorLevel: 0.015, share: 0.05 };

/** Everything a target is made of, as data. Positions are in the domain's unit; impossible values are the caller's to refuse. */
export interface TargetSpec {
  readonly id: string;
  readonly name: string;
  readonly cornerType: string;
  readonly advice: string | null;
  readonly axis: TargetAxis;
  readonly phases: LevelPhases;
  readonly turnIn: number | null;
  readonly apex: number | null;
  /** A `turn` needs `turnIn` and `apex`. */
  readonly steering: SteeringSpec | null;
  readonly gears: readonly GearEvent[];
  readonly corridor: CorridorSpec;
  readonly fullScale: FullScale;
  /** As in `Target`. */
  readonly learnedFrom: string | null;
}
