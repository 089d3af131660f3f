import { fixed, signed, signedTenths, tenths } from '../../number-text.ts';
import { describeCause } from '../../score/describe-cause.ts';
import type { FirstRepLoss } from './first-rep-loss.ts';
import type { ShownHidden } from './shown-hidden.ts';
import type { StartError } from './start-error.ts';
import type { SureCause } from './sure-cause.ts';

/** The cause of a block and how sure it is; empty where none was named or it is too small to be felt. */
export function causeSentence(sure: SureCause | null): string {
  const words = sure === null ? '' : describeCause(sure.cause);
  if (sure === null || words === '') return '';
  const { cause, reps, of, share, verdict } = sure;
  const between = `${Math.round(100 * share.low)} to ${Math.round(100 * share.high)} %`;
  return `${verdict} ${cause.kind}: ${words}, ${reps} of ${of} reps (${between})`;
}

/** Whether the release is worse without the own trace, with the interval of the difference; empty under three reps of either. */
export function hiddenSentence(feedback: ShownHidden): string {
  const verdict = hiddenVerdict(feedback);
  const { difference } = feedback;
  if (difference === null) return verdict;
  const { low, high, level } = difference.interval;
  return `${verdict} (${signedTenths(low)} to ${signedTenths(high)} % rms at ${Math.round(100 * level)} %)`;
}

/** The same in as few words as a small screen has room for; a difference that may be none is not given as one. */
export function hiddenVerdict({ difference }: ShownHidden): string {
  if (difference === null) return '';
  const { low, high } = difference.interval;
  // as they are read: what rounds to nothing may be nothing
  if (Number(tenths(low)) <= 0 && Number(tenths(high)) >= 0)
    return 'hidden or shown, no clear difference';
  const side = difference.shift > 0 ? 'worse' : 'better';
  return `hidden reps ${tenths(Math.abs(difference.shift))} % rms ${side} than shown`;
}

/** What the first rep cost against the others, where that is more than reps differ anyway; empty where it is not known. */
export function firstRepSentence(first: FirstRepLoss | null): string {
  if (first === null) return '';
  if (first.beyondSpread === false) return 'first rep within what reps differ';
  const points = Math.round(Math.abs(first.scorePoints));
  const side = first.scorePoints < 0 ? 'above' : 'below';
  return `first rep ${points} points ${side} the rest`;
}

/** When the foot came down, from the cue; empty where there was none. */
export function startSentence(start: StartError | null): string {
  if (start === null) return '';
  const { medianS, earliestS, latestS, reps } = start;
  const side = medianS < 0 ? 'before' : 'after';
  const told = `braked ${fixed(Math.abs(medianS), 2)} s ${side} the cue`;
  return reps === 1 ? told : `${told} (${signed(earliestS, 2)} to ${signed(latestS, 2)})`;
}
