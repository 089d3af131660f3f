import type { Curve } from './target.ts';

/** One hundredth of a per cent of full scale: less than half a count of a 12-bit sensor. */
export const TABLE_TOLERANCE = 1e-4;

const CELLS = 256;
/** Of one cell; a corner is then missed by some hundred thousandth of what the whole cell would miss. */
const MOST_HALVINGS = 16;

/**
 * A table of `f` with linear interpolation between its places, constant outside its ends. It is made when the curve is
 * first asked for a value: a list of targets asks none of them.
 *
 * A cell is halved until its midpoint is off by no more than half the tolerance, each by itself, so that a corner costs a
 * few places around it and no more. The halves have to be as close, too: a bend to both sides may cross its chord at the
 * midpoint. The curve is then within `tolerance` of `f` everywhere, provided each cell is smooth or holds one corner: a
 * smooth function is furthest off near the midpoint, and a corner at most twice as far off as the midpoint shows. Jumps
 * are not supported.
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
  const cellsPerUnit = CELLS / (end - start);
  let table: Table | null = null;
  return {
    start,
    end,
    at(x: number): number {
      table ??= tableOf(f, start, end, tolerance);
      const { places, values, firsts } = table;
      if (!(x > start)) return values[0]!;
      if (x >= end) return values[values.length - 1]!;
      const cell = Math.min(CELLS - 1, Math.floor((x - start) * cellsPerUnit));
      let low = firsts[cell]!;
      let high = firsts[cell + 1]!;
      while (high - low > 1) {
        const middle = (low + high) >> 1;
        if (places[middle]! <= x) low = middle;
        else high = middle;
      }
      const share = (x - places[low]!) / (places[high]! - places[low]!);
      return values[low]! + (values[high]! - values[low]!) * share;
    },
  };
}

interface Table {
  readonly places: Float64Array;
  readonly values: Float64Array;
  /** Where each cell begins among the places, and where the last one ends. */
  readonly firsts: Uint32Array;
}

function tableOf(f: (x: number) => number, start: number, end: number, tolerance: number): Table {
  const [places, values]: [number[], number[]] = [[start], [f(start)]];
  const halve = (to: number, toValue: number, left: number, wasClose: boolean): void => {
    const last = places.length - 1;
    const [from, fromValue] = [places[last]!, values[last]!];
    const middle = (from + to) / 2;
    const value = f(middle);
    const isClose = Math.abs((fromValue + toValue) / 2 - value) <= tolerance / 2;
    if ((isClose && wasClose) || left === 0) {
      places.push(middle, to);
      values.push(value, toValue);
    } else {
      halve(middle, value, left - 1, isClose);
      halve(to, toValue, left - 1, isClose);
    }
  };
  const firsts = new Uint32Array(CELLS + 1);
  for (let i = 0; i < CELLS; i++) {
    const to = i + 1 === CELLS ? end : start + ((end - start) * (i + 1)) / CELLS;
    halve(to, f(to), MOST_HALVINGS, false);
    firsts[i + 1] = places.length - 1;
  }
  return { places: Float64Array.from(places), values: Float64Array.from(values), firsts };
}
