import { plainId } from '../drill/plan/varied-target.ts';
import type { StoredRep } from '../history/store.ts';

/** True for a rep driven against just the target that was prepared for. */
export function isPlainRep({ targetId, targetChange, live }: StoredRep): boolean {
  if (live !== null) return live.call === null;
  return targetChange === null ? plainId(targetId) === targetId : targetChange.kind !== 'varied';
}
