import type { RepMeasure } from '../../consistency/rep-measure.ts';
import { repMeasureOf } from '../rep-measure-of.ts';
import { REP_SELECT, type RepRow, repOf } from './rep-row.ts';

/** Reps with the numbers of their newest score version; no samples, no JSON. */
export const MEASURE_SELECT: string = REP_SELECT.replace(
  'FROM rep',
  `, outcome.version AS o_version, outcome.score AS o_score, outcome.release_error_level AS o_release_error,
    outcome.average_error_level AS o_average_error, outcome.start_of_release_error_s AS o_start_of_release,
    outcome.reapplications AS o_reapplications
  FROM rep LEFT JOIN outcome ON outcome.rep_id = rep.id
    AND outcome.version = (SELECT max(version) FROM outcome WHERE rep_id = rep.id)`,
);

export interface MeasureRow extends RepRow {
  readonly o_version: number | null;
  readonly o_score: number | null;
  readonly o_release_error: number | null;
  readonly o_average_error: number | null;
  readonly o_start_of_release: number | null;
  readonly o_reapplications: number | null;
}

export function measureOf(row: MeasureRow): RepMeasure {
  const numbers =
    row.o_score === null
      ? null
      : {
          score: row.o_score,
          releaseErrorLevel: row.o_release_error,
          averageErrorLevel: row.o_average_error,
          startOfReleaseErrorS: row.o_start_of_release,
          reapplications: row.o_reapplications,
        };
  return repMeasureOf(repOf(row, []), row.o_version, numbers);
}
