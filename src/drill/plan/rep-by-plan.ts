import type { RepOutcome } from '../../score/rep-score.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import type { FinishedRep, RepTag } from '../drill-message.ts';
import type { DrillModel } from '../drill-model.ts';
import { afterRep, afterScore, type PlanProgress } from './plan-progress.ts';
import type { PracticeZone } from './planned-practice.ts';
import { plannedRep } from './planned-rep.ts';
import type { TargetChange } from './target-change.ts';
import type { Variation } from './variation.ts';

/** What the history keeps of the plan with a rep. A condition is that of the blocks alone. */
export function byPlan(
  { setup: { plan } }: Pick<DrillModel, 'setup'>,
  tag: RepTag,
): Pick<FinishedRep, 'order' | 'condition' | 'targetChange'> {
  if (plan === null) return { order: 'blocked', condition: null, targetChange: null };
  const { order, reps } = plan.blocks[tag.block - 1]!;
  const { variation, zone } = reps[tag.place - 1]!;
  return {
    order,
    condition: tag.phase === 'block' ? plan.condition : null,
    targetChange: changeOf(zone, variation),
  };
}

function changeOf({ paced }: PracticeZone, variation: Variation | null): TargetChange | null {
  if (paced) return { kind: 'paced by the steering' };
  return variation && { kind: 'varied', ...variation };
}

/** The plan's counts after the rep under way. */
export function planAfterRep(
  model: DrillModel,
  rep: { readonly tag: RepTag; readonly record: RepRecord; readonly counts: boolean },
): PlanProgress | null {
  const { setup, plan } = model;
  const planned = plannedRep(model);
  if (setup.plan === null || plan === null || planned === null) return null;
  return afterRep(plan, planned.zone, rep, setup.plan.hardReps);
}

/** The plan's counts after the score of a rep, which may no longer be the one under way. */
export function planAfterScore(
  { setup, plan }: Pick<DrillModel, 'setup' | 'plan'>,
  tag: RepTag,
  outcome: RepOutcome,
): PlanProgress | null {
  if (setup.plan === null || plan === null) return null;
  const { zone } = setup.plan.blocks[tag.block - 1]!.reps[tag.place - 1]!;
  return afterScore(plan, zone, tag, outcome, setup.plan.hardReps);
}
