import type { Feedback } from '../../drill/drill-view.ts';
import type { TargetChange } from '../../drill/plan/target-change.ts';
import type { LiveStart } from '../../live/live-start.ts';
import type { RepOutcome } from '../../score/rep-score.ts';
import { alreadyRated } from '../already-rated.ts';
import type { NewRep, PhaseTag, StoredRep } from '../store.ts';
import { PRACTICE_COLUMNS, type PracticeRow, practiceOf } from './practice-row.ts';
import type { SqlDatabase } from './sql-database.ts';

export const REP_SELECT: string = `SELECT rep.id, rep.utc_ms, rep.zone, rep.offset_min, rep.car, rep.corner, rep.variant,
  rep.condition, rep.live, rep.target_id, rep.target_version, rep.target_change, rep.number, rep.block, rep.phase, rep.block_order, rep.feedback,
  rep.self_rating, rep.voided, ${PRACTICE_COLUMNS}
  FROM rep JOIN practice ON practice.id = rep.practice_id`;

export interface RepRow extends PracticeRow {
  readonly id: number;
  readonly utc_ms: number;
  readonly zone: string;
  readonly offset_min: number;
  readonly car: string | null;
  readonly corner: string | null;
  readonly variant: string | null;
  readonly condition: string | null;
  readonly live: string | null;
  readonly target_id: string;
  readonly target_version: string;
  readonly target_change: string | null;
  readonly number: number;
  readonly block: number;
  readonly phase: PhaseTag;
  readonly block_order: NewRep['order'];
  readonly feedback: Feedback;
  readonly self_rating: string | null;
  readonly voided: NewRep['voided'];
}

export function repOf(row: RepRow, outcomes: readonly RepOutcome[]): StoredRep {
  return {
    id: row.id,
    practice: practiceOf(row),
    at: { utcMs: row.utc_ms, zone: row.zone, offsetMin: row.offset_min },
    car: row.car,
    corner: row.corner,
    variant: row.variant,
    condition: row.condition,
    live: row.live === null ? null : (JSON.parse(row.live) as LiveStart),
    targetId: row.target_id,
    targetVersion: row.target_version,
    targetChange:
      row.target_change === null ? null : (JSON.parse(row.target_change) as TargetChange),
    number: row.number,
    block: row.block,
    phase: row.phase,
    order: row.block_order,
    feedback: row.feedback,
    selfRating: row.self_rating,
    voided: row.voided,
    outcomes,
  };
}

/**
 * The rep without samples and outcome.
 * @param origin identity that stays the same in every copy of the history
 */
export function insertRep(
  db: SqlDatabase,
  practiceId: number,
  rep: Omit<NewRep, 'record' | 'outcome'>,
  origin: string,
): number {
  return db.run(
    `INSERT INTO rep (origin, practice_id, utc_ms, zone, offset_min, car, corner, variant, condition, live, target_id,
      target_version, target_change, number, block, phase, block_order, feedback, self_rating, voided)
      VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    origin,
    practiceId,
    rep.at.utcMs,
    rep.at.zone,
    rep.at.offsetMin,
    rep.car,
    rep.corner,
    rep.variant,
    rep.condition,
    rep.live === null ? null : JSON.stringify(rep.live),
    rep.targetId,
    rep.targetVersion,
    rep.targetChange === null ? null : JSON.stringify(rep.targetChange),
    rep.number,
    rep.block,
    rep.phase,
    rep.order,
    rep.feedback,
    rep.selfRating,
    rep.voided,
  );
}

/** @throws Problem for a rep that the driver has already rated */
export function insertSelfRating(db: SqlDatabase, repId: number, selfRating: string): void {
  if (isRated(db, repId)) throw alreadyRated(repId, db.file);
  db.run('UPDATE rep SET self_rating = ? WHERE id = ?', selfRating, repId);
}

export function isRated(db: SqlDatabase, repId: number): boolean {
  return db.get('SELECT 1 FROM rep WHERE id = ? AND self_rating IS NOT NULL', repId) !== null;
}
