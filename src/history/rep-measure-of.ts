import { localDate } from '../consistency/local-date.ts';
import type { RepMeasure, RepNumbers } from '../consistency/rep-measure.ts';
import type { StoredRep } from './store.ts';

/** A rep as the statistics see it; its day is that of the start of its practice. */
export function repMeasureOf(
  rep: Omit<StoredRep, 'outcomes'>,
  scoreVersion: number | null,
  numbers: RepNumbers | null,
): RepMeasure {
  const { practice } = rep;
  return {
    repId: rep.id,
    driver: practice.driver,
    targetId: rep.targetId,
    practiceId: practice.id,
    day: localDate(practice.startedAt),
    zone: practice.startedAt.zone,
    conditions: {
      targetVersion: rep.targetVersion,
      scoreVersion,
      source: practice.source,
      sensor: practice.sensor,
      calibrationId: practice.calibrationId,
      foot: practice.foot,
      footwear: practice.footwear,
    },
    feedback: rep.feedback,
    warmUp: rep.phase === 'warm-up',
    voided: rep.voided,
    numbers,
  };
}
