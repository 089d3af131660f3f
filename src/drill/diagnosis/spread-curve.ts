import { percentText } from '../../number-text.ts';
import type { BlockGrid } from './block-grid.ts';
import { BRAKE_PHASES, type BrakePhase } from './brake-phases.ts';
import { spreadCurve } from './mean-curve.ts';

/** How far reps of one practice differ from each other, moment by moment of their target. */
export interface PracticeSpread {
  /** Local date of the practice. */
  readonly day: string;
  readonly reps: number;
  readonly grid: BlockGrid;
  /** Standard deviation (n - 1) between reps at each place of the grid. */
  readonly spread: Float64Array;
  /** With the live car where each place of the grid is, m from turn-in; null for reps over time. */
  readonly placesM: Float64Array | null;
}

/** The spread curve of a series' last practice, or why there is none. */
export type LatestSpread =
  | { readonly kind: 'curve'; readonly curve: PracticeSpread }
  | { readonly kind: 'none'; readonly reason: string };

/** A phase and the root of the mean squared spread along it; null for a phase of no length. */
interface PhaseSpread {
  readonly phase: BrakePhase;
  readonly level: number | null;
}

/**
 * @param placesM of the grid by `gridPlacesM`, for reps of the live car
 * @returns null under three curves
 */
export function practiceSpread(
  day: string,
  curves: readonly Float64Array[],
  grid: BlockGrid,
  placesM: Float64Array | null = null,
): PracticeSpread | null {
  const spread = spreadCurve(curves);
  return spread === null ? null : { day, reps: curves.length, grid, spread, placesM };
}

/** The phases in their order. */
export function phaseSpreads({ grid, spread }: PracticeSpread): readonly PhaseSpread[] {
  return BRAKE_PHASES.map((phase) => {
    const along = spread.subarray(grid.phases[phase].from, grid.phases[phase].to);
    const squares = along.reduce((sum, level) => sum + level * level, 0);
    return { phase, level: along.length === 0 ? null : Math.sqrt(squares / along.length) };
  });
}

/** One line for the driver: where the reps of this practice part and where they meet; no word of a change. */
export function spreadReading(curve: PracticeSpread): string {
  const known = phaseSpreads(curve)
    .flatMap(({ phase, level }) =>
      level === null ? [] : [{ phase, text: percentText(level, 1), level }],
    )
    .toSorted((a, b) => b.level - a.level);
  const [widest, closest] = [known[0], known.at(-1)];
  if (widest === undefined || closest === undefined) return 'no phase to tell apart.';
  if (widest.text === closest.text) return `the same in all phases, ${widest.text}.`;
  return `widest in the ${widest.phase} (${widest.text}), closest in the ${closest.phase} (${closest.text}).`;
}

/** Plain data; null with the reason beside it. */
export function latestSpreadJson(latest: LatestSpread): Readonly<Record<string, unknown>> {
  return latest.kind === 'curve'
    ? { spread_curve: spreadCurveJson(latest.curve), spread_curve_missing: null }
    : { spread_curve: null, spread_curve_missing: latest.reason };
}

/** Levels 0..1 of full scale. */
function spreadCurveJson(curve: PracticeSpread): Readonly<Record<string, unknown>> {
  return {
    day: curve.day,
    hidden_reps: curve.reps,
    step_s: curve.grid.stepS,
    along_from_turn_in_m: curve.placesM === null ? null : Array.from(curve.placesM, tenths),
    spread_level: [...curve.spread],
    phases: phaseSpreads(curve).map(({ phase, level }) => ({ phase, spread_level: level })),
    reading: spreadReading(curve),
  };
}

/** A place to 0.1 m. */
function tenths(placeM: number): number {
  return Math.round(10 * placeM) / 10;
}
