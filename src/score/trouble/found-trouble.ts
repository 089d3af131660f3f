import type { ToldFault } from '../order-told.ts';
import type { RepScore } from '../rep-score.ts';

/** The part of a braking zone that a trouble lies in. */
export type TroublePart =
  | 'slowest speed'
  | 'release'
  | 'hit'
  | 'smooth'
  | 'brake point'
  | 'gears'
  | 'no rep';

/** What three reps or more had wrong in one part of the braking zone. */
export interface FoundTrouble extends ToldFault {
  readonly part: TroublePart;
  /** What to do about it, as words that follow `Next block:`. */
  readonly change: string;
  /** Reps that share it, and those that were looked at for it. */
  readonly reps: number;
  readonly of: number;
}

/** Points that some reps lost to a part of the score, together. */
export function pointsLostTo(
  part: keyof RepScore['pointsLost'],
  reps: readonly Pick<RepScore, 'pointsLost'>[],
): number {
  return reps.reduce((sum, { pointsLost }) => sum + (pointsLost[part] ?? 0), 0);
}
