import { type ChartSignal, chartSignals } from '../chart/chart-signals.ts';
import { type CusumPoint, cusum } from '../chart/cusum.ts';
import { type EwmaPoint, ewma } from '../chart/ewma.ts';
import { type ChartLimits, deviationOf, individualsLimits } from '../chart/individuals-chart.ts';
import { lagAutocorrelation, NOTABLE_AUTOCORRELATION } from '../summary/lag-autocorrelation.ts';

/** The median of one practice. */
export interface PracticeMedian {
  readonly practiceId: number;
  readonly day: string;
  readonly reps: number;
  /** Median release error. */
  readonly level: number;
}

/** A practice on the chart. Levels are turned back from the logarithms that the chart is made of. */
export interface ChartPoint extends PracticeMedian {
  /** Of the practices that the limits are made of. */
  readonly isBaseline: boolean;
  /** Factor to the practice before; null of the first. */
  readonly movingRangeFactor: number | null;
  readonly isRangeOutside: boolean;
  readonly signal: ChartSignal;
  /** After the baseline only, as are the sums. */
  readonly weighted: EwmaPoint | null;
  /** In deviations. */
  readonly sums: CusumPoint | null;
}

/** Practices against limits that were set once. */
export interface PracticeChart {
  readonly points: readonly ChartPoint[];
  /** Null before the baseline is complete. */
  readonly limits: {
    readonly centreLevel: number;
    readonly upperLevel: number;
    readonly lowerLevel: number;
    readonly movingRangeUpperFactor: number;
  } | null;
  readonly missingPractices: number;
  /** Of the baseline: later practices may drift, which is what the chart is for. */
  readonly autocorrelation: number | null;
  /** The limits are too narrow: neighbours resemble each other. */
  readonly isAutocorrelated: boolean;
}

/** Ten practices of at least eight reps: from fewer the limits are off by a third and more. */
const BASELINE_PRACTICES = 10;

/** The weight of the newest practice and the reach of the limits in deviations; slack and limit of the sums, likewise. */
export const CHART_RULES: {
  readonly weightedMean: { readonly weight: number; readonly reach: number };
  readonly sums: { readonly slack: number; readonly limit: number };
} = { weightedMean: { weight: 0.2, reach: 3 }, sums: { slack: 0.5, limit: 5 } };

/**
 * Individuals and moving-range chart, weighted means and cumulative sums of practice medians. The limits come from the
 * first practices of the segment and stay: limits that follow the driver would find every driver steady. All of it on
 * logarithms, because errors are skewed and their scatter grows with them: limits lie at the same factor either side.
 *
 * @param medians in time order, all above 0
 */
export function practiceChart(medians: readonly PracticeMedian[]): PracticeChart {
  const logs = medians.map(({ level }) => Math.log(level));
  const limits =
    logs.length < BASELINE_PRACTICES ? null : individualsLimits(logs.slice(0, BASELINE_PRACTICES));
  const autocorrelation = lagAutocorrelation(logs.slice(0, BASELINE_PRACTICES));
  return {
    points: limits === null ? medians.map(unjudged) : judged(medians, logs, limits),
    limits: limits === null ? null : levelsOf(limits),
    missingPractices: Math.max(0, BASELINE_PRACTICES - logs.length),
    autocorrelation,
    isAutocorrelated: (autocorrelation ?? 0) > NOTABLE_AUTOCORRELATION,
  };
}

function levelsOf(limits: ChartLimits): NonNullable<PracticeChart['limits']> {
  return {
    centreLevel: Math.exp(limits.centre),
    upperLevel: Math.exp(limits.upper),
    lowerLevel: Math.exp(limits.lower),
    movingRangeUpperFactor: Math.exp(limits.movingRangeUpper),
  };
}

function unjudged(median: PracticeMedian, i: number, all: readonly PracticeMedian[]): ChartPoint {
  return {
    ...median,
    isBaseline: i < BASELINE_PRACTICES,
    movingRangeFactor: rangeFactor(all, i),
    isRangeOutside: false,
    signal: null,
    weighted: null,
    sums: null,
  };
}

function judged(
  medians: readonly PracticeMedian[],
  logs: readonly number[],
  limits: ChartLimits,
): ChartPoint[] {
  const signals = chartSignals(logs, limits);
  const later = logs.slice(BASELINE_PRACTICES);
  const { centre } = limits;
  const deviation = deviationOf(limits);
  const weighted = ewma(later, { centre, deviation, ...CHART_RULES.weightedMean });
  const scaled = later.map((value) => (deviation === 0 ? 0 : (value - centre) / deviation));
  const sums = cusum(scaled, { centre: 0, ...CHART_RULES.sums });
  return medians.map(({ practiceId, day, reps, level }, i) => {
    const after = i - BASELINE_PRACTICES;
    const range = rangeFactor(medians, i);
    return {
      practiceId,
      day,
      reps,
      level,
      isBaseline: after < 0,
      movingRangeFactor: range,
      isRangeOutside: range !== null && Math.log(range) > limits.movingRangeUpper,
      signal: signals[i] ?? null,
      weighted: after < 0 ? null : inLevels(weighted[after]!),
      sums: after < 0 ? null : sums[after]!,
    };
  });
}

function inLevels({ value, upper, lower }: EwmaPoint): EwmaPoint {
  return { value: Math.exp(value), upper: Math.exp(upper), lower: Math.exp(lower) };
}

function rangeFactor(all: readonly PracticeMedian[], i: number): number | null {
  const [own, before] = [all[i]!.level, all[i - 1]?.level];
  return before === undefined ? null : Math.max(own, before) / Math.min(own, before);
}
