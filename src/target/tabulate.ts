import { columnOf } from '../trace/column-of.ts';
import type { Curve } from './target.ts';

/** One hundredth of a per cent of full scale: less than half a count of a 12-bit sensor. */
export const TABLE_TOLERANCE = 1e-4;

const FEWEST_CELLS = 512;
const MOST_CELLS = 65536;

/**
 * A table of `f` on a uniform grid with linear interpolation between, constant outside its ends.
 *
 * The grid is halved until no cell's midpoint is off by more than half the tolerance. The curve is then within
 * `tolerance` of `f` everywhere, provided each cell is smooth or holds one corner: a smooth function is furthest
 * off at the midpoint, and a corner at most twice as far off as the midpoint shows. Jumps are not supported.
 *
 * @param start smallest argument
 * @param end largest argument, above `start`
 * @param tolerance in the unit of `f`
 */
export function tabulate(
  f: (x: number) => number,
  start: number,
  end: number,
  tolerance: number = TABLE_TOLERANCE,
): Curve {
  if (!(end > start)) throw new RangeError(`a curve needs end above start, not ${start} to ${end}`);
  let table = sample(f, start, end, FEWEST_CELLS);
  while (table.length - 1 < MOST_CELLS) {
    const finer = sample(f, start, end, 2 * (table.length - 1), table);
    const error = largestMidpointError(table, finer);
    table = finer;
    if (error <= tolerance / 2) break;
  }
  return tableCurve(table, start, end);
}

/** @param coarse the same with half as many cells: what it holds is not asked for again */
function sample(
  f: (x: number) => number,
  start: number,
  end: number,
  cells: number,
  coarse: Float64Array | null = null,
): Float64Array {
  return columnOf(cells + 1, (i) => {
    if (coarse !== null && i % 2 === 0) return coarse[i / 2]!;
    return f(i === cells ? end : start + ((end - start) * i) / cells);
  });
}

function largestMidpointError(coarse: Float64Array, fine: Float64Array): number {
  let largest = 0;
  for (let i = 0; i + 1 < coarse.length; i++) {
    const between = (coarse[i]! + coarse[i + 1]!) / 2;
    largest = Math.max(largest, Math.abs(between - fine[2 * i + 1]!));
  }
  return largest;
}

function tableCurve(table: Float64Array, start: number, end: number): Curve {
  const cells = table.length - 1;
  const cellsPerUnit = cells / (end - start);
  return {
    start,
    end,
    at(x: number): number {
      const place = (x - start) * cellsPerUnit;
      if (!(place > 0)) return table[0]!;
      if (place >= cells) return table[cells]!;
      const i = Math.floor(place);
      const low = table[i]!;
      return low + (table[i + 1]! - low) * (place - i);
    },
  };
}
