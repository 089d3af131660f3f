import type { DrivenSum, StoredRep } from '../store.ts';

/** Reps summed up by target and corner. */
export function drivenSums(reps: Iterable<StoredRep>): readonly DrivenSum[] {
  const sums = new Map<string, DrivenSum>();
  for (const { targetId, corner, voided, at } of reps) {
    const key = JSON.stringify([targetId, corner]);
    const before = sums.get(key) ?? { targetId, corner, reps: 0, lastUtcMs: at.utcMs };
    sums.set(key, {
      ...before,
      reps: before.reps + (voided === null ? 1 : 0),
      lastUtcMs: Math.max(before.lastUtcMs, at.utcMs),
    });
  }
  return [...sums.values()];
}
