import type { ChartLimits } from './individuals-chart.ts';

/** What a control chart calls out: in either direction, so that getting better is seen too. */
export type ChartSignal = 'above limits' | 'below limits' | 'eight above' | 'eight below' | null;

const RUN = 8;

/**
 * The signal at each value: outside the limits (once in 370 values by chance), or the eighth or later in a row on one
 * side of the centre (once in 256 values or so). More rules would only find more by chance.
 */
export function chartSignals(values: readonly number[], limits: ChartLimits): ChartSignal[] {
  let run = 0;
  return values.map((value) => {
    const side = Math.sign(value - limits.centre);
    run = side === 0 ? 0 : side === Math.sign(run) ? run + side : side;
    if (value > limits.upper) return 'above limits';
    if (value < limits.lower) return 'below limits';
    if (run >= RUN) return 'eight above';
    return run <= -RUN ? 'eight below' : null;
  });
}
