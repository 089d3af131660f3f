import { localDate } from '../../consistency/local-date.ts';
import { BYTE_ORDER_MARK, type CsvCell, csvRow } from '../../report/csv/csv-row.ts';
import type { HistorySnapshot, KeptPractice, KeptQuery, KeptRep } from '../kept.ts';

type Column = readonly [name: string, cell: (rep: KeptRep, practice: KeptPractice) => CsvCell];

const scored = ({ outcomes }: KeptRep) => {
  const newest = outcomes.at(-1);
  return newest?.kind === 'scored' ? newest : null;
};

const COLUMNS: readonly Column[] = [
  ['driver', (_, { start }) => start.driver],
  ['local_date', (_, { start }) => localDate(start.startedAt)],
  ['practice_start_utc', (_, { start }) => isoTime(start.startedAt.utcMs)],
  ['rep_utc', ({ fields }) => isoTime(fields.at.utcMs)],
  ['rep_number', ({ fields }) => fields.number],
  ['block_number', ({ fields }) => fields.block],
  ['phase', ({ fields }) => fields.phase],
  ['order', ({ fields }) => fields.order],
  ['feedback', ({ fields }) => fields.feedback],
  ['target', ({ fields }) => fields.targetId],
  ['target_version', ({ fields }) => fields.targetVersion],
  ['car', ({ fields }) => fields.car],
  ['corner', ({ fields }) => fields.corner],
  ['variant', ({ fields }) => fields.variant],
  ['condition', ({ fields }) => fields.condition],
  ['self_rating', ({ fields }) => fields.selfRating],
  ['void', ({ fields }) => fields.voided],
  ['score_version', ({ outcomes }) => outcomes.at(-1)?.version ?? null],
  ['score_points', ({ outcomes }) => outcomes.at(-1)?.score ?? null],
  ['release_points_lost', (rep) => scored(rep)?.pointsLost.release ?? null],
  ['hit_points_lost', (rep) => scored(rep)?.pointsLost.hit ?? null],
  ['smooth_points_lost', (rep) => scored(rep)?.pointsLost.smooth ?? null],
  ['release_error_level', (rep) => scored(rep)?.releaseErrorLevel ?? null],
  ['average_error_level', (rep) => scored(rep)?.averageErrorLevel ?? null],
  ['in_corridor_share', (rep) => scored(rep)?.inCorridor ?? null],
  ['peak_error_share', (rep) => scored(rep)?.peakError ?? null],
  ['rise_error_s', (rep) => scored(rep)?.riseErrorS ?? null],
  ['start_of_release_error_s', (rep) => scored(rep)?.keyPointErrorsS.startOfRelease ?? null],
  ['brake_off_error_s', (rep) => scored(rep)?.keyPointErrorsS.brakeOff ?? null],
  ['reapplication_count', (rep) => scored(rep)?.reapplications ?? null],
  ['cause', (rep) => scored(rep)?.cause?.kind ?? null],
  ['brake_point_error_m', (rep) => scored(rep)?.live?.brakePointErrorM ?? null],
  ['slowest_speed_error_mps', (rep) => scored(rep)?.live?.slowestSpeedErrorMps ?? null],
  ['source', (_, { start }) => start.source],
  ['sensor', (_, { start }) => start.sensor],
  ['foot', (_, { start }) => start.foot],
  ['footwear', (_, { start }) => start.footwear],
  ['calibration', (_, { start }) => start.calibrationId],
  ['practice_id', ({ practice }) => practice],
  ['rep_id', ({ origin }) => origin],
];

/** A spreadsheet of reps by their newest score, one a row, with a header. */
export function* repCsvLines(snapshot: HistorySnapshot, query: KeptQuery): Iterable<string> {
  yield BYTE_ORDER_MARK + csvRow(COLUMNS.map(([name]) => name));
  let practice: KeptPractice | null = null;
  for (const rep of snapshot.reps(query)) {
    if (practice?.origin !== rep.practice) practice = snapshot.practice(rep.practice);
    const own = practice!;
    yield csvRow(COLUMNS.map(([, cell]) => cell(rep, own)));
  }
}

/** As spreadsheets read it: UTC, without the letters of ISO 8601. */
function isoTime(utcMs: number): string {
  return new Date(utcMs).toISOString().replace('T', ' ').replace('Z', '');
}
