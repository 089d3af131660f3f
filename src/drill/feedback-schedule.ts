import type { Feedback } from './drill-view.ts';
import { seededRandom } from './seeded-random.ts';

/** How often the own trace is drawn while a target is learned, by the driver's reps on it so far. */
const STAGES = [
  { untilRep: 3, shown: 'always' },
  { untilRep: 23, shown: 'every other' },
  { untilRep: 43, shown: 0.5 },
  { untilRep: Number.POSITIVE_INFINITY, shown: 0.33 },
] as const;

/**
 * Whether a rep is shown: the first three reps of a target, then every other one, then by chance, ever more rarely.
 * Constant live feedback is leaned on and leaves little when it is gone; alternating and fading it keeps the gain
 * (Park, Shea and Wright, J Mot Behav 32:287, 2000; Winstein and Schmidt, JEP:LMC 16:677, 1990).
 *
 * @param repsInLife reps of this target before this one
 */
export function scheduledFeedback(
  repsInLife: number,
  seed: number,
): Exclude<Feedback, 'first-of-day'> {
  const { shown } = STAGES.find(({ untilRep }) => repsInLife < untilRep)!;
  if (shown === 'always') return 'shown';
  if (shown === 'every other')
    return (repsInLife - STAGES[0].untilRep) % 2 === 1 ? 'shown' : 'hidden';
  return seededRandom(seed, repsInLife)() < shown ? 'shown' : 'hidden';
}

/** Reps at the start of a day that show no target. */
export const FIRST_OF_DAY_REPS = 5;
const NEW_DAY_H = 24;

/** A new day needs something to remember: reps of this target, the last rep of anything 24 h ago or more. */
export function startsNewDay(repsInLife: number, hoursSinceLastRep: number | null): boolean {
  return repsInLife > 0 && hoursSinceLastRep !== null && hoursSinceLastRep >= NEW_DAY_H;
}
