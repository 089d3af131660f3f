import type { Interval } from '../../consistency/interval.ts';
import { shareInterval } from '../../consistency/summary/share-interval.ts';
import type { DiagnosedRep } from './diagnosed-rep.ts';

/** How often the driver gave a rep up. A headline without it could be had by giving up the bad ones. */
export interface AbortRate {
  readonly aborted: number;
  /** Reps that were scored or aborted; one lost with its device is nobody's fault. */
  readonly attempts: number;
  readonly share: number | null;
  /** Clopper and Pearson; null without attempts. */
  readonly interval: Interval | null;
}

export function abortRate(reps: readonly DiagnosedRep[]): AbortRate {
  const aborted = reps.filter(({ voided }) => voided === 'aborted').length;
  const attempts = aborted + reps.filter(({ outcome }) => outcome !== null).length;
  return {
    aborted,
    attempts,
    share: attempts === 0 ? null : aborted / attempts,
    interval: attempts === 0 ? null : shareInterval(aborted, attempts),
  };
}
