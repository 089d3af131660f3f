import type { RepRecord } from '../trace/rep-record.ts';
import type { NoRep, NoRepReason } from './rep-score.ts';
import type { RepSignal } from './rep-signal.ts';
import { hasGap } from './score-flags.ts';
import { sideMeasures } from './side-measures.ts';

/** The outcome of a record in which there is no rep to measure. */
export function noRep(
  reason: NoRepReason,
  version: number,
  record: RepRecord,
  rep: RepSignal | null,
): NoRep {
  const flags = hasGap(record, Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY)
    ? (['gap'] as const)
    : [];
  const side = rep === null ? null : sideMeasures(record, rep, null, null);
  return { kind: 'no-rep', version, score: 0, reason, side, flags };
}
