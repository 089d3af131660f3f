import { NARROWEST_BANDS } from '../score/advice-bands.ts';
import { describeCause } from '../score/describe-cause.ts';
import { type KeyPointFault, sharedKeyPointFault } from '../score/key-point-fault.ts';
import { targetReleaseS } from '../score/release-points.ts';
import type { Cause, RepScore } from '../score/rep-score.ts';

/**
 * One sentence on what to change in the next block; it says what to do, not what was wrong.
 *
 * @param cause what most reps of the block shared; null where no three shared one
 * @param reps the scored ones of the block
 */
export function blockAdvice(cause: Cause | null, reps: readonly RepScore[]): string {
  if (reps.length < 3) return 'Three scored reps or more are needed to name a cause.';
  if (cause === null) return withoutCause(sharedKeyPointFault(reps, NARROWEST_BANDS.timingS));
  if (describeCause(cause) === '') return 'Nothing to correct: do the same again.';
  return `Next block: ${changeFor(cause, reps)}.`;
}

/** Reps that differ in start, pace and weight may still miss the same moment. */
function withoutCause(fault: KeyPointFault | null): string {
  return fault === null
    ? 'No cause shared by three reps: aim for the same release every time.'
    : `Next block: ${shapeChange(fault)}.`;
}

/**
 * What to change about a cause, as words that follow `Next block:`; times are of the reps' own target.
 *
 * @param reps those that the cause was named from
 */
export function changeFor(
  { kind, timingS, rateRatio, amountRatio }: Cause,
  reps: readonly RepScore[],
): string {
  switch (kind) {
    case 'timing':
      return `start to release ${milliseconds(timingS)} ${timingS < 0 ? 'later' : 'earlier'}`;
    case 'rate':
      return `take ${timeFor(rateRatio, reps)} over the release`;
    case 'amount':
      return `${percent(1 / amountRatio)} ${amountRatio < 1 ? 'more' : 'less'} pressure through the release`;
    case 'shape':
      return shapeChange(sharedKeyPointFault(reps, NARROWEST_BANDS.timingS));
  }
}

/** Of another length than the target's by so much: `270 ms more`, or a share where the target's is not known. */
function timeFor(rateRatio: number, reps: readonly RepScore[]): string {
  const releaseS = targetReleaseS(reps);
  const side = rateRatio < 1 ? 'more' : 'less';
  return releaseS === null
    ? `${percent(1 / rateRatio)} ${side} time`
    : `${milliseconds((1 - rateRatio) * releaseS)} ${side}`;
}

/** Where most reps left the target at the same moment, that moment; else they only share that they left it. */
function shapeChange(fault: KeyPointFault | null): string {
  if (fault === null) return 'one even release from start to end, without a step or a second push';
  const off = `${milliseconds(fault.errorS)} ${fault.errorS < 0 ? 'later' : 'earlier'}`;
  switch (fault.point) {
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
