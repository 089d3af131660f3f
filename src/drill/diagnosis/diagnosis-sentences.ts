import { describeCause } from '../../score/describe-cause.ts';
import type { FirstRepLoss } from './first-rep-loss.ts';
import { signed } from './phase-rows.ts';
import type { ShownHidden } from './shown-hidden.ts';
import type { SureCause } from './sure-cause.ts';

/** The cause of a block and how sure it is; empty where none was named or it is too small to be felt. */
export function causeSentence(sure: SureCause | null): string {
  const words = sure === null ? '' : describeCause(sure.cause);
  if (sure === null || words === '') return '';
  const { cause, reps, of, share, verdict } = sure;
  const between = `${Math.round(100 * share.low)} to ${Math.round(100 * share.high)} %`;
  return `${verdict} ${cause.kind}: ${words}, ${reps} of ${of} reps (${between})`;
}

/** Release error of hidden reps less that of shown ones; empty under three reps of either. */
export function hiddenSentence({ difference }: ShownHidden): string {
  if (difference === null) return '';
  const { low, high, level } = difference.interval;
  const range = `${signed(low)} to ${signed(high)} at ${Math.round(100 * level)} %`;
  return `hidden less shown ${signed(difference.shift)} % rms (${range})`;
}

/** What the first rep cost against the others; empty where that is not known. */
export function firstRepSentence(first: FirstRepLoss | null): string {
  if (first === null) return '';
  const points = Math.round(Math.abs(first.scorePoints));
  const side = first.scorePoints < 0 ? 'above' : 'below';
  return `first rep ${points} points ${side}${first.beyondSpread === true ? ', beyond spread' : ''}`;
}
