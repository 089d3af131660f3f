import type { PracticePlan } from './practice-plan.ts';

/** Share from which on live feedback is leaned on. */
const OFTEN = 0.5;

/** What is allowed and still hardly meant, one sentence each. */
export function planWarnings(plan: PracticePlan): readonly string[] {
  return [...alwaysShown(plan), ...manyReps(plan)];
}

/**
 * Feedback in most reps for good is leaned on and leaves little when it is gone (Winstein and Schmidt, JEP:LMC
 * 16:677, 1990).
 */
function alwaysShown({ feedback }: PracticePlan): string[] {
  if (feedback.kind === 'scheduled') return [];
  const share = feedback.stages.at(-1)!.shownShare;
  if (share <= OFTEN) return [];
  const percent = Math.round(100 * share);
  return [
    `${percent} % of the reps stay shown for good: what is learned by the trace alone is gone without it.`,
  ];
}

function manyReps({ blocks, hardReps }: PracticePlan): string[] {
  const reps = blocks.reduce((sum, block) => sum + block.reps, 0);
  if (reps <= hardReps.most) return [];
  return [
    `The blocks have ${reps} reps; the practice ends with the block that reaches ${hardReps.most} hard ones.`,
  ];
}
