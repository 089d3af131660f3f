import type { KeyPointFault } from '../key-point-fault.ts';
import { targetReleaseS } from '../release-points.ts';
import type { Cause, RepScore } from '../rep-score.ts';

/**
 * What to change about a cause, as words that follow `Next block:`; times are of the reps' own target.
 *
 * @param reps those that the cause was named from
 */
export function changeFor(
  { kind, timingS, rateRatio: timeRatio, amountRatio }: Cause,
  reps: readonly RepScore[],
): string {
  switch (kind) {
    case 'timing':
      return `start to release ${milliseconds(timingS)} ${timingS < 0 ? 'later' : 'earlier'}`;
    case 'rate':
      return `take ${timeFor(timeRatio, reps)} over the release`;
    case 'amount':
      return `${percent(1 / amountRatio)} ${amountRatio < 1 ? 'more' : 'less'} pressure through the release`;
    case 'shape':
      return 'one even release from start to end, without a step or a second push';
  }
}

/** Of another length than the target's by so much: `270 ms more`, or a share where the target's is not known. */
function timeFor(timeRatio: number, reps: readonly RepScore[]): string {
  const releaseS = targetReleaseS(reps);
  const side = timeRatio < 1 ? 'more' : 'less';
  return releaseS === null
    ? `${percent(1 / timeRatio)} ${side} time`
    : `${milliseconds((1 - timeRatio) * releaseS)} ${side}`;
}

/** What to change about a moment that most reps missed. */
export function momentChange({ point, errorS }: KeyPointFault): string {
  const off = `${milliseconds(errorS)} ${errorS < 0 ? 'later' : 'earlier'}`;
  switch (point) {
    case 'startOfRelease':
      return `start to release ${off}`;
    case 'halfRelease':
      return `come to half pressure ${off}`;
    case 'finalRelease':
      return `come to the last tenth ${off}`;
    case 'brakeOff':
      return `come off the brake ${off}`;
  }
}

const milliseconds = (timeS: number): string => `${10 * Math.round(Math.abs(timeS) * 100)} ms`;
const percent = (ratio: number): string => `${Math.round(100 * Math.abs(ratio - 1))} %`;
