import { RISE_SHAPES, type RiseShape, riseShare } from '../rise-shape.ts';

/** The initial application as one push. Seconds after the onset. */
export interface FittedRise {
  readonly startS: number;
  readonly durationS: number;
  readonly shape: RiseShape;
  /** Root mean square of what is left, as a level. */
  readonly missLevel: number;
}

interface RiseData {
  /** Levels from `fromS` on, at equal steps. */
  readonly levels: Float64Array;
  readonly fromS: number;
  readonly stepS: number;
  readonly nearPeakS: number;
  readonly peakLevel: number;
}

/** The onset comes a little late on every rise, more so on a slow one. */
const EARLIEST_SHARE = 0.5;
const QUICKEST_S = 0.02;
/** The coarsest and the finest step of the search. */
const COARSE_S = 0.02;
const FINE_S = 0.0005;

/** The push to `peakLevel` that is closest to the curve up to nine tenths of it (least squares over start and duration). */
export function fitRise(data: RiseData): FittedRise {
  const fits = RISE_SHAPES.map((shape) => fitShape(data, shape));
  return fits.reduce((best, fit) => (fit.missLevel < best.missLevel ? fit : best));
}

function fitShape(data: RiseData, shape: RiseShape): FittedRise {
  const reachS = EARLIEST_SHARE * data.nearPeakS + 0.1;
  const longestS = 2 * data.nearPeakS + 0.2;
  const missOf = missFunction(data, shape, -reachS);
  let best = { startS: -reachS, durationS: QUICKEST_S, missLevel: Number.POSITIVE_INFINITY };
  const look = (startS: number, durationS: number): void => {
    const missLevel = durationS < QUICKEST_S ? Number.POSITIVE_INFINITY : missOf(startS, durationS);
    if (missLevel < best.missLevel) best = { startS, durationS, missLevel };
  };
  for (let startS = -reachS; startS <= COARSE_S; startS += COARSE_S)
    for (let durationS = QUICKEST_S; durationS <= longestS; durationS += COARSE_S)
      look(startS, durationS);
  for (let stepS = COARSE_S / 2; stepS >= FINE_S; stepS /= 2) lookAround(best, stepS, look);
  return { ...best, shape };

  function lookAround(from: typeof best, stepS: number, at: typeof look): void {
    for (let i = -3; i <= 3; i++)
      for (let k = -3; k <= 3; k++) at(from.startS + i * stepS, from.durationS + k * stepS);
  }
}

function missFunction(
  { levels, fromS, stepS, nearPeakS, peakLevel }: RiseData,
  shape: RiseShape,
  earliestS: number,
): (startS: number, durationS: number) => number {
  const share = riseShare(shape);
  const first = Math.max(0, Math.floor((earliestS - fromS) / stepS));
  const last = Math.min(levels.length - 1, Math.ceil((nearPeakS - fromS) / stepS));
  return (startS, durationS) => {
    let sum = 0;
    for (let i = first; i <= last; i++) {
      const u = (fromS + i * stepS - startS) / durationS;
      sum += (levels[i]! - peakLevel * share(Math.min(1, Math.max(0, u)))) ** 2;
    }
    return Math.sqrt(sum / (last - first + 1));
  };
}
