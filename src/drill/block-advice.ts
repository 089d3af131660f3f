import { NARROWEST_BANDS } from '../score/advice-bands.ts';
import { describeCause } from '../score/describe-cause.ts';
import { type KeyPointFault, sharedKeyPointFault } from '../score/key-point-fault.ts';
import type { Cause, RepScore } from '../score/rep-score.ts';
import { type SpokenUnits, sharedSpeed } from '../score/slowest-speed.ts';
import { changeFor, shapeChange } from './change-for.ts';
import { speedChange } from './speed-advice.ts';

/**
 * One sentence on what to change in the next block; it says what to do, not what was wrong. A corner that most reps
 * entered far too fast or too slow comes first.
 *
 * @param cause what most reps of the block shared; null where no three shared one
 * @param reps the scored ones of the block
 */
export function blockAdvice(
  cause: Cause | null,
  reps: readonly RepScore[],
  units: SpokenUnits = 'metric',
): string {
  if (reps.length < 3) return 'Three scored reps or more are needed to name a cause.';
  const speed = sharedSpeed(reps);
  if (speed !== null) return `Next block: ${speedChange(speed, cause, reps, units)}.`;
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
