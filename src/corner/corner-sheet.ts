import type { CarOverrides } from '../car/car-overrides.ts';
import type { CallWord } from './call-word.ts';
import type { Line } from './line.ts';

/** A value of the road at a place: m before the apex, positive before it. */
export interface RoadValue {
  readonly beforeApexM: number;
  /** Rise over run. */
  readonly ratio: number;
}

interface SheetBump {
  /** Where the bump starts. */
  readonly beforeApexM: number;
  readonly lengthM: number;
  /** Deepest loss of wheel load, share 0..1. */
  readonly lossShare: number;
}

/** What the coach looks for beside the road, with its own word. */
export interface SheetMark {
  readonly beforeApexM: number;
  readonly word: string;
}

export interface SheetGears {
  readonly approach: number;
  readonly slowest: number;
  /** Places of the downshifts in driving order; null leaves each at its earliest safe place. */
  readonly shiftsBeforeApexM: readonly number[] | null;
}

/** One way to drive the corner, everything it does not change taken from the sheet. */
export interface CornerVariant {
  readonly name: string;
  readonly note: string | null;
  /** The late call that asks for this variant; null where none does. */
  readonly call: CallWord | null;
  readonly approachSpeedMps: number;
  readonly approachM: number;
  /** All lengths and radii of the line times this: below 1 is a tighter line. */
  readonly lineFactor: number;
  /** Share of the grip to use, 0..1. */
  readonly gripShare: number;
  readonly gears: SheetGears;
  /** What the variant changes about the car. */
  readonly car: CarOverrides;
}

/** A coach's sheet for one corner, in SI. Places are metres before the apex, the tightest place of the line. */
export interface CornerSheet {
  /** File name without its ending. */
  readonly id: string;
  readonly name: string;
  readonly cornerType: string;
  readonly advice: string | null;
  /** Fingerprint of the file's text. */
  readonly version: string;
  readonly line: Line;
  /** Slope positive uphill, bank positive where it helps. Ascending along the road; empty where flat. */
  readonly slope: readonly RoadValue[];
  readonly bank: readonly RoadValue[];
  readonly bumps: readonly SheetBump[];
  readonly coachMark: SheetMark | null;
  /** At least one; the first is what a driver gets who names none. */
  readonly variants: readonly CornerVariant[];
}
