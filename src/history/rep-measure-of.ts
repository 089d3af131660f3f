import { localDate } from '../consistency/local-date.ts';
import type { RepMeasure, RepNumbers } from '../consistency/rep-measure.ts';
import type { StoredPractice, StoredRep } from './store.ts';

/** The fields of a rep that decide how it is counted. */
export type CountedRep = Pick<
  StoredRep,
  'id' | 'targetId' | 'targetVersion' | 'condition' | 'phase' | 'feedback' | 'selfRating' | 'voided'
>;

/** A rep as the statistics see it; its day is that of the start of its practice. */
export function repMeasureOf(
  practice: StoredPractice,
  rep: CountedRep,
  scoreVersion: number | null,
  numbers: RepNumbers | null,
): RepMeasure {
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
      condition: rep.condition,
    },
    feedback: rep.feedback,
    warmUp: rep.phase === 'warm-up',
    selfRating: rep.selfRating,
    voided: rep.voided,
    numbers,
  };
}
