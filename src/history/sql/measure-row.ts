import type { RepMeasure, RepNumbers } from '../../consistency/rep-measure.ts';
import type { CountedRep, MeasureMaker } from '../rep-measure-of.ts';
import type { StoredPractice } from '../store.ts';

/**
 * Reps with the numbers of their newest score version. Only what the statistics need, for it is read for years of
 * reps at once: no samples, no JSON, and the practices, of which there are few, are read once and not with every rep.
 */
export const MEASURE_SELECT: string = `SELECT rep.id, rep.practice_id AS practiceId, rep.target_id AS targetId,
    rep.target_version AS targetVersion, rep.condition, rep.phase, rep.feedback, rep.voided,
    rep.self_rating AS selfRating, outcome.version, outcome.score,
    outcome.release_error_level AS releaseErrorLevel, outcome.average_error_level AS averageErrorLevel,
    outcome.start_of_release_error_s AS startOfReleaseErrorS, outcome.reapplications
  FROM rep JOIN practice ON practice.id = rep.practice_id
  LEFT JOIN outcome ON outcome.rep_id = rep.id
    AND outcome.version = (SELECT max(version) FROM outcome WHERE rep_id = rep.id)`;

export interface MeasureRow extends CountedRep, Omit<RepNumbers, 'score'> {
  readonly practiceId: number;
  /** Null for a void rep, as is the score. */
  readonly version: number | null;
  readonly score: number | null;
}

export function measureOf(
  row: MeasureRow,
  practice: StoredPractice,
  make: MeasureMaker,
): RepMeasure {
  const { score, releaseErrorLevel, averageErrorLevel, startOfReleaseErrorS, reapplications } = row;
  const errors = { releaseErrorLevel, averageErrorLevel, startOfReleaseErrorS, reapplications };
  return make(practice, row, row.version, score === null ? null : { score, ...errors });
}
