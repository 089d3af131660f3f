import { signedTenths, tenths } from '../../number-text.ts';
import type { PhaseDiagnosis } from './block-diagnosis.ts';
import type { PhaseCause } from './phase-cause.ts';

/** Headings of the table of phases; levels are in % of full scale. */
export const PHASE_HEADINGS: readonly [string, ...string[]] = [
  'phase',
  'average error (95 %)',
  'spread',
  'cause',
];

/** Width of each column but the last. */
const COLS: readonly number[] = [13, 24, 8];

/** One row per phase: name, average error with its interval, spread, cause. What is not known is a dash. */
export function phaseRows(phases: readonly PhaseDiagnosis[]): readonly (readonly string[])[] {
  return phases.map((phase) => [
    phase.phase,
    averageText(phase),
    phase.spreadLevel === null ? '-' : `${tenths(phase.spreadLevel)} %`,
    phase.cause === null ? '-' : phaseCauseText(phase.cause),
  ]);
}

/** The table as lines, its heading first. At most 78 columns where at most 99 reps share a cause. */
export function phaseTable(phases: readonly PhaseDiagnosis[]): readonly [string, ...string[]] {
  return [tableLine(PHASE_HEADINGS), ...phaseRows(phases).map(tableLine)];
}

function tableLine(cells: readonly string[]): string {
  return cells
    .map((cell, column) => `${cell} `.padEnd(COLS[column] ?? 0))
    .join('')
    .trimEnd();
}

function averageText({ averageErrorLevel, averageErrorInterval }: PhaseDiagnosis): string {
  if (averageErrorLevel === null) return '-';
  const value = `${signedTenths(averageErrorLevel)} %`;
  if (averageErrorInterval === null) return value;
  const { low, high } = averageErrorInterval;
  return `${value} (${signedTenths(low)} to ${signedTenths(high)})`;
}

/** For example `timing, 0.06 s late in 7 of 10`. */
function phaseCauseText(cause: PhaseCause): string {
  return `${differenceText(cause)} in ${cause.reps} of ${cause.of}`;
}

function differenceText({ kind, size }: PhaseCause): string {
  const seconds = `${Math.abs(size).toFixed(2)} s`;
  if (kind === 'timing') return `timing, ${seconds} ${size > 0 ? 'late' : 'early'}`;
  if (kind === 'rate') return `rate, ${seconds} ${size > 0 ? 'slow' : 'quick'}`;
  return `amount, ${Math.round(100 * Math.abs(size))} % ${size > 0 ? 'heavy' : 'light'}`;
}
