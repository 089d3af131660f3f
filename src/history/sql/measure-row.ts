import type { RepNumbers } from '../../consistency/rep-measure.ts';
import type { CountedRep } from '../shared-maker.ts';
import type { SqlDatabase } from './sql-database.ts';

/** What reps share with many others of their practice. */
export interface RepKind extends CountedRep {
  readonly corner: string | null;
}

/** A rep with the numbers of its newest score version: only what the statistics and queries on them need. */
export interface MeasureRow extends RepKind, Omit<RepNumbers, 'score'> {
  readonly id: number;
  readonly utcMs: number;
  readonly score: number | null;
}

/** The reps of a practice, oldest first. */
export function measureRows(db: SqlDatabase, practiceId: number): MeasureRow[] {
  return db.all<MeasureRow>(
    `SELECT rep.id, rep.utc_ms AS utcMs, rep.target_id AS targetId, rep.target_version AS targetVersion, rep.corner,
      rep.condition, rep.phase, rep.feedback, rep.self_rating AS selfRating, rep.voided,
      outcome.version AS scoreVersion, outcome.score, outcome.release_error_level AS releaseErrorLevel,
      outcome.average_error_level AS averageErrorLevel,
      outcome.start_of_release_error_s AS startOfReleaseErrorS, outcome.peak_error AS peakError, outcome.reapplications
    FROM rep LEFT JOIN outcome ON outcome.rep_id = rep.id
      AND outcome.version = (SELECT max(version) FROM outcome WHERE rep_id = rep.id)
    WHERE rep.practice_id = ? ORDER BY rep.utc_ms, rep.id`,
    practiceId,
  );
}
