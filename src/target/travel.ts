import type { Curve, TargetSpeeds } from './target.ts';

/** How a car gets through the distance of a target. Times count from the start of the rise. */
export interface Travel {
  /** Seconds at which it is `distanceM` before the slowest point. */
  timeAt(distanceM: number): number;
  /** Metres to the slowest point at `timeS`. */
  distanceAt(timeS: number): number;
  speedAt(distanceM: number): number;
  /** Deceleration in m/s^2 that level 1 stands for. */
  readonly fullScaleDecelerationMps2: number;
}

const CELLS = 4096;

/**
 * The travel of a car whose deceleration is proportional to the level: the square of the speed falls from entry to
 * slowest with the integral of the level over distance, `v^2 = entry^2 - 2 a S`, with `a` such that the slowest
 * speed is reached at brake off. Before the curve the car runs at entry speed, after it at the slowest speed.
 *
 * Left out: drag, downforce, engine braking, slope and grip.
 * The table is exact for a level that is constant within a cell and of second order otherwise.
 *
 * @param level over metres to the slowest point, not zero everywhere
 */
export function travelOf(level: Curve, { entryMps, slowestMps }: TargetSpeeds): Travel {
  const { start, end } = level;
  const cellM = (end - start) / CELLS;
  const area = areaFromEnd(level, cellM);
  const fallPerArea = (entryMps ** 2 - slowestMps ** 2) / area[CELLS]!;
  const speed = area.map((covered) => Math.sqrt(entryMps ** 2 - fallPerArea * covered));
  const time = new Float64Array(CELLS + 1);
  for (let i = 0; i < CELLS; i++)
    time[i + 1] = time[i]! + (2 * cellM) / (speed[i]! + speed[i + 1]!);
  const cellAt = (distanceM: number): number => (end - distanceM) / cellM;
  const placeOf = inverse(time);
  return {
    timeAt(distanceM) {
      if (distanceM > end) return (end - distanceM) / entryMps;
      if (distanceM < start) return time[CELLS]! + (start - distanceM) / slowestMps;
      return between(time, cellAt(distanceM));
    },
    distanceAt(timeS) {
      if (timeS < 0) return end - timeS * entryMps;
      if (timeS > time[CELLS]!) return start - (timeS - time[CELLS]!) * slowestMps;
      return end - cellM * placeOf(timeS);
    },
    speedAt: (distanceM) => between(speed, Math.min(CELLS, Math.max(0, cellAt(distanceM)))),
    fullScaleDecelerationMps2: fallPerArea / 2,
  };
}

/** Integral of the level from the far end, by Simpson's rule in each cell. */
function areaFromEnd(level: Curve, cellM: number): Float64Array {
  const area = new Float64Array(CELLS + 1);
  for (let i = 0; i < CELLS; i++) {
    const far = level.end - i * cellM;
    const ends = level.at(far) + level.at(far - cellM);
    area[i + 1] = area[i]! + (cellM / 6) * (ends + 4 * level.at(far - cellM / 2));
  }
  return area;
}

/** Linear interpolation at a fractional index. */
function between(table: Float64Array, place: number): number {
  const i = Math.min(CELLS - 1, Math.floor(place));
  return table[i]! + (table[i + 1]! - table[i]!) * (place - i);
}

/** Fractional index at which a rising table reaches a value. Curves ask in rising order: it looks where it last was. */
function inverse(table: Float64Array): (value: number) => number {
  let cell = 0;
  const isIn = (i: number, value: number): boolean => table[i]! <= value && value < table[i + 1]!;
  return (value) => {
    if (!isIn(cell, value)) cell = isIn(cell + 1, value) ? cell + 1 : cellOf(table, value);
    return cell + (value - table[cell]!) / (table[cell + 1]! - table[cell]!);
  };
}

/** The last cell that begins at a value or below it, by halving. */
function cellOf(table: Float64Array, value: number): number {
  let low = 0;
  let high = CELLS;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (table[middle]! <= value) low = middle;
    else high = middle;
  }
  return low;
}
