import { riseShare } from '../rise-shape.ts';
import { type RiseSqueeze, riseAlong } from '../rise-squeeze.ts';
import type { ZoneKeyPoints } from './zone-key-points.ts';
import type { ZonePoint } from './zone-point.ts';

/** The rise of a target file that says a derived application. */
interface FittedHit {
  readonly lengthM: number;
  /** Null where one push does. */
  readonly squeeze: RiseSqueeze | null;
}

/** By how much a rise may ask for more than the application, in levels: beyond it the front axle would be over its grip. */
const OVER = 0.002;
const RISE_TRIALS = 40;
/** A squeeze beyond either has nothing left to say that a push does not. */
const LATEST_SHARE = 0.95;
const HIGHEST_SHARE = 0.98;
const E_FOLDS = { least: 0.3, most: 12 };
const HALVINGS = 30;

/**
 * The rise that comes closest to an application from below: a push, and where load was waited for a squeeze to the peak.
 *
 * @param points in driving order from the brake point
 */
export function fitHit(
  points: readonly ZonePoint[],
  { brakePoint, peak }: ZoneKeyPoints,
): FittedHit {
  const wholeM = brakePoint.distanceM - peak.distanceM;
  const rising = points.slice(0, points.indexOf(peak) + 1).map(
    ({ distanceM, level, limiter }): Risen => ({
      runM: brakePoint.distanceM - distanceM,
      share: level / peak.level,
      waits: limiter === 'load',
    }),
  );
  const over = OVER / peak.level;
  const squeeze = fitSqueeze(rising, wholeM, over);
  return squeeze === null
    ? { lengthM: pushLength(rising, wholeM, over), squeeze }
    : { lengthM: wholeM, squeeze };
}

/** A place of the application. */
interface Risen {
  readonly runM: number;
  /** Of the peak. */
  readonly share: number;
  readonly waits: boolean;
}

function fitSqueeze(rising: readonly Risen[], wholeM: number, over: number): RiseSqueeze | null {
  const from = rising.find(({ waits }) => waits);
  if (from === undefined) return null;
  const afterShare = from.runM / wholeM;
  if (afterShare > LATEST_SHARE || from.share > HIGHEST_SHARE) return null;
  const squeeze = (eFolds: number) => ({ fromShare: from.share, afterShare, eFolds });
  const isOver = (eFolds: number): boolean => {
    const along = riseAlong('minimum-jerk', squeeze(eFolds));
    return rising.some(({ runM, share }) => along(runM / wholeM) - share > over);
  };
  let { least, most } = E_FOLDS;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (least + most) / 2;
    if (isOver(middle)) most = middle;
    else least = middle;
  }
  return squeeze(least);
}

/** Length of the one push that is nowhere over the application and comes closest to it. */
function pushLength(rising: readonly Risen[], wholeM: number, over: number): number {
  const push = riseShare('minimum-jerk');
  const missOf = (lengthM: number): number => {
    const misses = rising.map(({ runM, share }) => push(Math.min(1, runM / lengthM)) - share);
    const above = Math.max(...misses);
    return above > over ? 1 + above : -Math.min(...misses);
  };
  const lengths = Array.from({ length: RISE_TRIALS }, (_, i) => (wholeM * (i + 1)) / RISE_TRIALS);
  return lengths.reduce(
    (best, lengthM) => (missOf(lengthM) < missOf(best) ? lengthM : best),
    wholeM,
  );
}
