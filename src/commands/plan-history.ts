import { localDate } from '../consistency/local-date.ts';
import type { HiddenRep } from '../drill/plan/promotion-stage.ts';
import { targetSteeringLag } from '../drill/plan/target-steering-lag.ts';
import { variedId } from '../drill/plan/varied-target.ts';
import type { StoredRep } from '../history/store.ts';
import type { Target } from '../target/target.ts';
import type { PlanCircumstances } from './planned-setup.ts';

const MS_PER_DAY = 86_400_000;
/** A week and the day on which it began elsewhere. */
const WEEK_DAYS = 8;

/** The driver's reps of a version of a target that hid the own trace, oldest first, by their newest score. */
export function hiddenReps(
  target: Target,
  { store, driver }: PlanCircumstances,
): readonly HiddenRep[] {
  const lagS = targetSteeringLag(target);
  const hidden: HiddenRep[] = [];
  for (const rep of store.reps({ driver, targetId: target.id, targetVersion: target.version }))
    if (rep.feedback !== 'shown' && rep.voided === null) hidden.push(hiddenRep(rep, lagS));
  return hidden;
}

function hiddenRep({ outcomes }: StoredRep, targetLagS: number | null): HiddenRep {
  const outcome = outcomes.at(-1);
  if (outcome?.kind !== 'scored') return { inCorridor: 0, steeringLagErrorS: null };
  const lagS = outcome.side.steeringLagS;
  return {
    inCorridor: outcome.inCorridor,
    steeringLagErrorS: lagS === null || targetLagS === null ? null : lagS - targetLagS,
  };
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

/** The local date on which the driver last drove a target, plain or varied, in whatever version; null for never. */
export function lastDay({ id }: Target, { store, driver }: PlanCircumstances): string | null {
  const days = [id, variedId(id)].flatMap((targetId) =>
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
