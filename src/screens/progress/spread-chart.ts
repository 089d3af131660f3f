import { BRAKE_PHASES } from '../../drill/diagnosis/brake-phases.ts';
import type { PracticeSpread } from '../../drill/diagnosis/spread-curve.ts';
import { countText, fixed } from '../../number-text.ts';
import { distanceText, type TextUnits } from '../../unit-text.ts';

const COLUMNS = 70;
const ROWS = 7;
const LABEL = 6;

/** The spread along the target from left to right, at most 80 columns; the ends of the phases stand below. */
export function spreadChart(curve: PracticeSpread, units: TextUnits = 'metric'): string[] {
  const { day, reps, spread } = curve;
  const columns = widestByColumn(spread);
  const top = Math.max(...columns, 0.001);
  const lines = Array.from({ length: ROWS }, (_, row) => {
    const bars = columns.map((level) => (barRows(level, top) >= ROWS - row ? '#' : ' ')).join('');
    const label = row === 0 ? fixed(100 * top, 1) : '';
    return `${label.padStart(LABEL)} |${bars}`.trimEnd();
  });
  return [
    `Spread along the target, % of full scale: ${countText(reps, 'hidden rep')} of ${day}.`,
    ...lines,
    `${'0.0'.padStart(LABEL)} +${axis(curve)}`,
    `${''.padEnd(LABEL + 2)}${endsOf(curve, units)}`,
    'Below, ^ in turn: start of release, 50 %, 10 %, brake off.',
  ];
}

/** The first and the last place: seconds from the rise, with the live car the distance from turn-in. */
function endsOf({ grid, spread, placesM }: PracticeSpread, units: TextUnits): string {
  const [from, to] =
    placesM === null
      ? ['0 s', `${((spread.length - 1) * grid.stepS).toFixed(1)} s`]
      : [placeText(placesM[0]!, units), placeText(placesM.at(-1)!, units)];
  return `${from}${to.padStart(COLUMNS - from.length)}`;
}

function placeText(placeM: number, units: TextUnits): string {
  return `${distanceText(Math.abs(placeM), units, 0)} ${placeM < 0 ? 'before' : 'after'} turn-in`;
}

/** A peak between two columns is not lost. */
function widestByColumn(spread: Float64Array): readonly number[] {
  return Array.from({ length: COLUMNS }, (_, column) => {
    const from = Math.floor((column * spread.length) / COLUMNS);
    const to = Math.max(from + 1, Math.floor(((column + 1) * spread.length) / COLUMNS));
    return spread.subarray(from, to).reduce((most, level) => Math.max(most, level), 0);
  });
}

function barRows(level: number, top: number): number {
  return Math.round((level / top) * ROWS);
}

function axis({ grid, spread }: PracticeSpread): string {
  const cells = new Array<string>(COLUMNS).fill('-');
  for (const phase of BRAKE_PHASES) {
    const column = Math.floor((grid.phases[phase].to * COLUMNS) / spread.length);
    cells[Math.min(COLUMNS - 1, Math.max(0, column))] = '^';
  }
  return cells.join('');
}
