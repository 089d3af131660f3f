import { localDate } from '../consistency/local-date.ts';
import type { SharedMeasure } from '../consistency/rep-columns.ts';
import type { Conditions } from '../consistency/rep-measure.ts';
import type { StoredPractice, StoredRep } from './store.ts';

/** The fields of a rep that decide how it is counted. */
export interface CountedRep
  extends Pick<
    StoredRep,
    'targetId' | 'targetVersion' | 'condition' | 'phase' | 'feedback' | 'selfRating' | 'voided'
  > {
  /** The newest; null for a void rep. */
  readonly scoreVersion: number | null;
}

/** Makes of a rep what it shares with others. */
type SharedMaker = (practice: StoredPractice, rep: CountedRep) => SharedMeasure;

/**
 * Looks at reps one after the other. The day is that of the start of the practice; day and conditions are made once
 * for neighbours that share them, which are nearly all of years of reps.
 */
export function sharedMaker(): SharedMaker {
  let [practiceId, day] = [-1, ''];
  let conditions: Conditions | null = null;
  return (practice, rep) => {
    if (practice.id !== practiceId) {
      practiceId = practice.id;
      day = localDate(practice.startedAt);
    }
    conditions = sameConditions(conditions, conditionsOf(practice, rep));
    return {
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
    };
  };
}

function conditionsOf(
  { source, sensor, calibrationId, foot, footwear }: StoredPractice,
  { targetVersion, condition, scoreVersion }: CountedRep,
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
