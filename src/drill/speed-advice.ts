import { NARROWEST_BANDS } from '../score/advice-bands.ts';
import { causeFault, momentFault } from '../score/describe-cause.ts';
import type { SpeedSide } from '../score/fault.ts';
import { sharedKeyPointFault } from '../score/key-point-fault.ts';
import { quantile } from '../score/quantile.ts';
import type { Cause, RepScore } from '../score/rep-score.ts';
import { PEAK_LIMITS } from '../score/score-version.ts';
import {
  type SharedSpeed,
  type SpokenUnits,
  speedSide,
  speedText,
} from '../score/slowest-speed.ts';
import { changeFor, shapeChange } from './change-for.ts';

/** Something to do about a speed, and the points that it cost the block. */
interface Change {
  readonly words: string;
  /** Which way what it mends leads. */
  readonly mends: SpeedSide;
  readonly lost: number;
}

/**
 * What to do about a corner that most reps of a block entered far too fast or too slow, as words that follow
 * `Next block:`: the speed, then the dearest thing that leads that way; the speed alone where none is known.
 */
export function speedChange(
  { errorMps }: SharedSpeed,
  cause: Cause | null,
  reps: readonly RepScore[],
  units: SpokenUnits,
): string {
  const side = speedSide(errorMps);
  const other = side === 'fast' ? 'slower' : 'faster';
  const aim = `be ${speedText(errorMps, units)} ${other} at the slowest point`;
  const [change] = [releaseChange(cause, reps), brakePointChange(reps), hitChange(reps)]
    .filter((found) => found?.mends === side)
    .toSorted((a, b) => b!.lost - a!.lost);
  return change == null ? aim : `${aim}; ${change.words}`;
}

/** What most reps shared in their speed, in words; empty for nothing. */
export function speedSentence(speed: SharedSpeed | null, units: SpokenUnits): string {
  if (speed === null) return '';
  const { errorMps, reps, of } = speed;
  return `${speedText(errorMps, units)} too ${speedSide(errorMps)} at the slowest point, ${reps} of ${of} reps`;
}

function releaseChange(cause: Cause | null, reps: readonly RepScore[]): Change | null {
  const lost = lostTo('release', reps);
  const named = cause === null ? null : causeFault(cause, NARROWEST_BANDS);
  if (cause !== null && named?.makes != null)
    return { words: changeFor(cause, reps), mends: named.makes, lost };
  if (cause !== null && cause.kind !== 'shape') return null;
  const moment = sharedKeyPointFault(reps, NARROWEST_BANDS.timingS);
  const mends = moment === null ? null : momentFault(moment).makes;
  return mends === null ? null : { words: shapeChange(moment), mends, lost };
}

function brakePointChange(reps: readonly RepScore[]): Change | null {
  const middle = (of: 'brakePointErrorM' | 'brakePointErrorS'): number =>
    quantile(
      reps.flatMap(({ live }) => (live == null ? [] : live[of])),
      0.5,
    ) ?? 0;
  const metres = Math.round(Math.abs(middle('brakePointErrorM')));
  const errorS = middle('brakePointErrorS');
  if (Math.abs(errorS) < NARROWEST_BANDS.timingS || metres === 0) return null;
  return {
    words: `brake ${metres} m ${errorS > 0 ? 'earlier' : 'later'}`,
    mends: speedSide(errorS),
    lost: lostTo('brakePoint', reps),
  };
}

function hitChange(reps: readonly RepScore[]): Change | null {
  const peakError = quantile(
    reps.map((rep) => rep.peakError),
    0.5,
  )!;
  if (Math.abs(peakError) <= PEAK_LIMITS.full) return null;
  return {
    words: `hit ${Math.round(100 * Math.abs(peakError))} % ${peakError < 0 ? 'harder' : 'lighter'}`,
    mends: peakError < 0 ? 'fast' : 'slow',
    lost: lostTo('hit', reps),
  };
}

function lostTo(part: keyof RepScore['pointsLost'], reps: readonly RepScore[]): number {
  return reps.reduce((sum, { pointsLost }) => sum + (pointsLost[part] ?? 0), 0);
}
