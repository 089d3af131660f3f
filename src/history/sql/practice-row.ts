import type { Foot, PracticeStart, SourceKind, StoredPractice } from '../store.ts';
import type { SqlDatabase } from './sql-database.ts';

/** The columns of a practice under names that do not clash with those of a rep in a join. */
export const PRACTICE_COLUMNS = `practice.id AS p_id, practice.driver AS p_driver, practice.utc_ms AS p_utc_ms,
  practice.zone AS p_zone, practice.offset_min AS p_offset_min, practice.source AS p_source, practice.foot AS p_foot,
  practice.footwear AS p_footwear, practice.calibration_id AS p_calibration_id, practice.sensor AS p_sensor,
  practice.seed AS p_seed`;

export interface PracticeRow {
  readonly p_id: number;
  readonly p_driver: string;
  readonly p_utc_ms: number;
  readonly p_zone: string;
  readonly p_offset_min: number;
  readonly p_source: SourceKind;
  readonly p_foot: Foot;
  readonly p_footwear: string;
  readonly p_calibration_id: string;
  readonly p_sensor: PracticeStart['sensor'];
  readonly p_seed: number | null;
}

export function practiceOf(row: PracticeRow): StoredPractice {
  return {
    id: row.p_id,
    driver: row.p_driver,
    startedAt: { utcMs: row.p_utc_ms, zone: row.p_zone, offsetMin: row.p_offset_min },
    source: row.p_source,
    foot: row.p_foot,
    footwear: row.p_footwear,
    calibrationId: row.p_calibration_id,
    sensor: row.p_sensor,
    seed: row.p_seed,
  };
}

/** @param origin identity that stays the same in every copy of the history */
export function insertPractice(db: SqlDatabase, start: PracticeStart, origin: string): number {
  return db.run(
    `INSERT INTO practice (origin, driver, utc_ms, zone, offset_min, source, foot, footwear, calibration_id, sensor,
      seed) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    origin,
    start.driver,
    start.startedAt.utcMs,
    start.startedAt.zone,
    start.startedAt.offsetMin,
    start.source,
    start.foot,
    start.footwear,
    start.calibrationId,
    start.sensor,
    start.seed,
  );
}
