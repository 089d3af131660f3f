import { localDate } from '../consistency/local-date.ts';
import { pacedIdentity } from '../drill/plan/paced-identity.ts';
import { variedId } from '../drill/plan/varied-target.ts';
import type { Target } from '../target/target.ts';
import type { PlanCircumstances } from './planned-setup.ts';

const MS_PER_DAY = 86_400_000;
/** A week and the day on which it began elsewhere. */
const WEEK_DAYS = 8;

/**
 * How much of its release each of the driver's hidden reps of a version of a target was in the corridor, oldest first,
 * by its newest score; 0 for a rep without a release.
 */
export function hiddenReps(
  target: Target,
  { store, driver }: PlanCircumstances,
): readonly number[] {
  const shares: number[] = [];
  for (const rep of store.reps({ driver, targetId: target.id, targetVersion: target.version })) {
    if (rep.feedback === 'shown' || rep.voided !== null) continue;
    const outcome = rep.outcomes.at(-1);
    shares.push(outcome?.kind === 'scored' ? outcome.inCorridor : 0);
  }
  return shares;
}

/** Release errors of the driver's earlier reps on a target under a condition. */
export function earlierErrors(
  target: Target,
  condition: string,
  { store, driver }: PlanCircumstances,
): readonly number[] {
  const errors: number[] = [];
  for (const rep of store.reps({ driver, targetId: target.id, targetVersion: target.version })) {
    const outcome = rep.outcomes.at(-1);
    if (rep.condition === condition && outcome?.kind === 'scored')
      errors.push(outcome.releaseErrorLevel);
  }
  return errors;
}

/** The local date on which the driver last drove a target, changed or not, in whatever version; null for never. */
export function lastDay(target: Target, { store, driver }: PlanCircumstances): string | null {
  const days = [target.id, variedId(target.id), pacedIdentity(target).id].flatMap((targetId) =>
    [...store.reps({ driver, targetId, limit: 1 })].map(({ at }) => localDate(at)),
  );
  return days.toSorted().at(-1) ?? null;
}

/** The local date of the driver's last carry-over rep of the last week; null for none. */
export function lastCarryOverDay({ store, driver, now }: PlanCircumstances): string | null {
  let day: string | null = null;
  const sinceUtcMs = now.utcMs - WEEK_DAYS * MS_PER_DAY;
  for (const { phase, at } of store.reps({ driver, sinceUtcMs }))
    if (phase === 'carry-over') day = localDate(at);
  return day;
}
