import type { Interval } from '../../consistency/interval.ts';
import type { MedianShift } from '../../consistency/summary/median-shift.ts';
import type { BlockGrid } from '../diagnosis/block-grid.ts';
import type { BrakePhase } from '../diagnosis/brake-phases.ts';
import type { ComparedRep, UncomparedRep } from './compared-rep.ts';

/** Logged braking zones held against reps on the rig. */
export interface Comparison {
  readonly grid: BlockGrid;
  readonly rig: readonly ComparedRep[];
  readonly car: readonly ComparedRep[];
  readonly uncomparedRig: readonly UncomparedRep[];
  readonly uncomparedCar: readonly UncomparedRep[];
  readonly force: ForceComparison;
  readonly phases: readonly PhaseComparison[];
  readonly points: readonly PointComparison[];
}

export interface ForceComparison {
  /** What stands for level 1 of the rig once both plateaus agree, in the brake's unit of the log. */
  readonly levelOneInCar: number;
  /** Pressed in the car over pressed on the rig, at the full scale that is given; null where nobody says it. */
  readonly ratio: { readonly value: number; readonly interval: Interval } | null;
}

export interface PhaseComparison {
  readonly phase: BrakePhase;
  /** In the car less on the rig, as a level of the rig; null for a phase of no length. */
  readonly difference: MedianShift | null;
  /** What of it would not matter: half the corridor's width, on average over the phase. */
  readonly marginLevel: number;
  readonly rigSpreadLevel: number | null;
  readonly carSpreadLevel: number | null;
  readonly verdict: CarryVerdict;
}

/**
 * `carried over`: the whole interval of the difference is inside the margin; `not`: it does not hold 0, and the
 * difference is more than the margin; `not driven`: neither side was on the brake there; else `open`.
 */
export type CarryVerdict = 'carried over' | 'not' | 'not driven' | 'open';

export interface PointComparison {
  readonly point: ComparedPoint;
  /** In the car less on the rig, seconds after the onset: positive is later, for `rise` slower. Null under three of a side. */
  readonly difference: MedianShift | null;
}

export type ComparedPoint =
  | 'rise'
  | 'start of release'
  | 'half release'
  | 'final release'
  | 'brake off'
  | 'wheel to brake';
