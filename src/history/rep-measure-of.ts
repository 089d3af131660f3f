import { localDate } from '../consistency/local-date.ts';
import type { Conditions, RepMeasure, RepNumbers } from '../consistency/rep-measure.ts';
import type { StoredPractice, StoredRep } from './store.ts';

/** The fields of a rep that decide how it is counted. */
export type CountedRep = Pick<
  StoredRep,
  'id' | 'targetId' | 'targetVersion' | 'condition' | 'phase' | 'feedback' | 'selfRating' | 'voided'
>;

/** Makes of a rep what the statistics see of it. */
export type MeasureMaker = (
  practice: StoredPractice,
  rep: CountedRep,
  scoreVersion: number | null,
  numbers: RepNumbers | null,
) => RepMeasure;

/**
 * Makes measures of reps one after the other. The day is that of the start of the practice; day and conditions are
 * made once for neighbours that share them, which are nearly all of years of reps.
 */
export function measureMaker(): MeasureMaker {
  let [practiceId, day] = [-1, ''];
  let conditions: Conditions | null = null;
  return (practice, rep, scoreVersion, numbers) => {
    if (practice.id !== practiceId) {
      practiceId = practice.id;
      day = localDate(practice.startedAt);
    }
    conditions = sameConditions(conditions, conditionsOf(practice, rep, scoreVersion));
    return {
      repId: rep.id,
      driver: practice.driver,
      targetId: rep.targetId,
      practiceId: practice.id,
      day,
      zone: practice.startedAt.zone,
      conditions,
      feedback: rep.feedback,
      warmUp: rep.phase === 'warm-up',
      selfRating: rep.selfRating,
      voided: rep.voided,
      numbers,
    };
  };
}

function conditionsOf(
  { source, sensor, calibrationId, foot, footwear }: StoredPractice,
  { targetVersion, condition }: CountedRep,
  scoreVersion: number | null,
): Conditions {
  return {
    targetVersion,
    scoreVersion,
    source,
    sensor,
    calibrationId,
    foot,
    footwear,
    condition,
  };
}

/** The last conditions where nothing changed. */
function sameConditions(last: Conditions | null, own: Conditions): Conditions {
  if (last === null) return own;
  for (const name of Object.keys(own) as (keyof Conditions)[])
    if (last[name] !== own[name]) return own;
  return last;
}
