import type { Promotion } from './practice-plan.ts';

/** What a driver is ready for: the load grows only as far as what is there already is mastered. */
type PromotionStage = 'over time' | 'paced by the steering' | 'live car';

/**
 * What comes next for a driver on a target. So many of the last hidden reps in the corridor earn a release paced by the
 * steering: the same target, along which the driver's own wheel moves the now line. So many of those earn the live car.
 * Nothing but the reps is looked at, so that whoever loses it over a break starts where the foot is (Guadagnoli and
 * Lee, J Mot Behav 36:212, 2004).
 *
 * @param overTime share of the release in the corridor of each hidden rep of one version of the target, oldest first;
 *   0 for a rep without a release
 * @param paced the same of the reps paced by the steering; null where the target has no steering or the rig no wheel,
 *   and the step between is left out
 */
export function promotionStage(
  overTime: readonly number[],
  paced: readonly number[] | null,
  promotion: Promotion,
): PromotionStage {
  if (!isMastered(overTime, promotion)) return 'over time';
  if (paced === null || isMastered(paced, promotion)) return 'live car';
  return 'paced by the steering';
}

function isMastered(
  shares: readonly number[],
  { inCorridorReps, ofHiddenReps, corridorShare }: Promotion,
): boolean {
  const good = shares.slice(-ofHiddenReps).filter((share) => share >= corridorShare);
  return good.length >= inCorridorReps;
}
