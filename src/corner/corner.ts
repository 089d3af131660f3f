import type { Path } from './path.ts';

/** A bump or crest that unloads the wheels. */
export interface CornerBump {
  /** Where it starts along the path, m from turn-in; negative is before it. */
  readonly atM: number;
  readonly lengthM: number;
  /** Deepest loss of wheel load, share 0..1. */
  readonly depth: number;
}

/** What the coach looks for beside the road, with its own word. */
export interface CoachMark {
  /** m from turn-in, negative before it. */
  readonly sM: number;
  readonly word: string;
}

/** Gears through the zone: from the approach down to the slowest point. */
export interface GearPlan {
  readonly approach: number;
  readonly slowest: number;
  /** Places of the downshifts, m from turn-in, in driving order; null leaves each at its earliest safe place. */
  readonly shiftsAtM: readonly number[] | null;
}

/** A braking zone with its corner, one variant applied. Distances along the path from turn-in, negative before it. */
export interface Corner {
  readonly id: string;
  readonly name: string;
  readonly cornerType: string;
  readonly variant: string;
  readonly path: Path;
  readonly approachSpeedMps: number;
  /** Length of straight before turn-in that the zone may use, m. */
  readonly approachM: number;
  /** Slope along the path, rise over run, positive uphill. */
  slopeAt(sM: number): number;
  /** Bank, rise over run, positive where it helps. */
  bankAt(sM: number): number;
  readonly bumps: readonly CornerBump[];
  /** Null where the sheet has none. */
  readonly coachMark: CoachMark | null;
  readonly gears: GearPlan;
  /** Share of the grip to use, 0..1. */
  readonly gripShare: number;
}
