import type { Target } from '../target/target.ts';
import type { TextUnits } from '../unit-text.ts';
import { blockSummary } from './block-summary.ts';
import type { DoneRep } from './drill-model.ts';
import type { TargetSummary } from './drill-view.ts';

/**
 * What a block came to, target by target, because scores compare only on one; the target with most reps first, and of
 * equals the one driven first.
 *
 * @param usual the target of a block without a rep
 */
export function summaryByTarget(
  done: readonly DoneRep[],
  usual: Target,
  units: TextUnits,
): readonly [TargetSummary, ...TargetSummary[]] {
  const reps = new Map<Target, DoneRep[]>();
  for (const rep of done.toReversed()) {
    const same = reps.get(rep.gridTarget);
    if (same === undefined) reps.set(rep.gridTarget, [rep]);
    else same.unshift(rep);
  }
  const [first, ...others] = [...reps].toSorted(([, a], [, b]) => b.length - a.length);
  const summaryOf = ([target, own]: readonly [Target, readonly DoneRep[]]): TargetSummary => ({
    targetName: target.name,
    summary: blockSummary(own, target, units),
  });
  return [summaryOf(first ?? [usual, []]), ...others.map(summaryOf)];
}
