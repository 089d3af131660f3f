/** What a series of counts looks like, as far as it tells a pedal from a counter, a button or noise. */
export interface SeriesShape {
  readonly min: number;
  readonly max: number;
  readonly span: number;
  /** Largest change from one report to the next. */
  readonly largestStep: number;
  /** Changes of direction, those smaller than a share of the span left out. */
  readonly turns: number;
}

/** A change of direction counts when the series comes back by this share of its span. */
const TURN_SHARE = 0.15;

/** Shape of a series; all zero when it is empty. */
export function seriesShape(values: Float64Array): SeriesShape {
  if (values.length === 0) return { min: 0, max: 0, span: 0, largestStep: 0, turns: 0 };
  let [min, max, largestStep] = [values[0]!, values[0]!, 0];
  for (let i = 1; i < values.length; i++) {
    const value = values[i]!;
    min = Math.min(min, value);
    max = Math.max(max, value);
    largestStep = Math.max(largestStep, Math.abs(value - values[i - 1]!));
  }
  const turns = countTurns(values, Math.max(1, TURN_SHARE * (max - min)));
  return { min, max, span: max - min, largestStep, turns };
}

/** Counts direction changes with hysteresis: one counts once the series is `band` back from its last extreme. */
function countTurns(values: Float64Array, band: number): number {
  let [turns, direction, low, high] = [0, 0, values[0]!, values[0]!];
  for (const value of values) {
    low = Math.min(low, value);
    high = Math.max(high, value);
    const rises = direction <= 0 && value - low > band;
    const falls = direction >= 0 && high - value > band;
    if (!rises && !falls) continue;
    if (direction !== 0) turns++;
    direction = rises ? 1 : -1;
    low = value;
    high = value;
  }
  return turns;
}

/** Far above the few presses that are asked for, far below noise. */
const MAX_TURNS = 60;

/** True for a series that goes somewhere without tearing, however often it turns. */
export function isContinuous({ span, largestStep, turns }: SeriesShape): boolean {
  return span > 0 && largestStep <= span / 2 && turns <= MAX_TURNS;
}

/** True for a series that never changes, and for an empty one. */
export function isConstant(values: Float64Array): boolean {
  return values.every((value) => value === values[0]);
}

/** How often one value differs from the one before. */
export function changesOf(values: Float64Array): number {
  let changes = 0;
  for (let i = 1; i < values.length; i++) if (values[i] !== values[i - 1]) changes++;
  return changes;
}
