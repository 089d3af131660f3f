import type { Feedback } from '../drill-view.ts';
import { scheduledFeedback } from '../feedback-schedule.ts';
import { seededRandom } from '../seeded-random.ts';
import type { FeedbackRule, PracticePlan, RepPhase } from './practice-plan.ts';

/** What came before a rep, of its zone only. */
export interface RepCounts {
  readonly inLife: number;
  readonly inPractice: number;
  /** How many of the last reps were shown without a break. */
  readonly shownInARow: number;
}

/**
 * What a rep of a plan shows. Warm-up reps are shown and carry-over reps are not, as first-of-day reps are not; the reps
 * of the blocks follow the plan's rule, and never more in a row are shown than it says. Feedback that fades keeps what
 * was learned where constant feedback loses it (Park, Shea and Wright, J Mot Behav 32:287, 2000).
 */
export function planFeedback(
  { feedback, mostShownInARow }: Pick<PracticePlan, 'feedback' | 'mostShownInARow'>,
  phase: RepPhase,
  counts: RepCounts,
  seed: number,
): Feedback {
  if (phase === 'first-of-day') return 'first-of-day';
  if (phase === 'warm-up') return 'shown';
  if (phase === 'carry-over' || counts.shownInARow >= mostShownInARow) return 'hidden';
  if (feedback.kind === 'scheduled') return scheduledFeedback(counts.inLife, seed);
  const rep = feedback.counted === 'life' ? counts.inLife : counts.inPractice;
  return isShown(feedback, rep, seed) ? 'shown' : 'hidden';
}

/**
 * Shown reps are spread evenly over their stage: of any run of its reps as many are shown as the share says, to the
 * nearest rep. The seed decides where the stage begins.
 */
function isShown(
  { stages }: Extract<FeedbackRule, { kind: 'thinning' }>,
  rep: number,
  seed: number,
): boolean {
  const stage = stages.findIndex(({ untilRep }) => rep < untilRep);
  const { shownShare } = stages[stage]!;
  const place = rep - (stages[stage - 1]?.untilRep ?? 0);
  const offset = seededRandom(seed, stage)();
  const shownBefore = (reps: number): number => Math.floor(reps * shownShare + offset);
  return shownBefore(place + 1) > shownBefore(place);
}
