import { Problem } from '../../problem.ts';
import type { RepOutcome } from '../../score/rep-score.ts';
import { repNumbers } from '../rep-numbers.ts';
import type { SqlDatabase } from './sql-database.ts';

/** @throws Problem for a version that the rep already has; a stored outcome is never rewritten. */
export function insertOutcome(db: SqlDatabase, repId: number, outcome: RepOutcome): void {
  if (hasOutcome(db, repId, outcome.version))
    throw new Problem(`rep ${repId} already has a score of version ${outcome.version}`, {
      where: db.file,
      next: 'Leave it: a stored score is never rewritten.',
    });
  const numbers = repNumbers(outcome);
  const scored = outcome.kind === 'scored' ? outcome : null;
  db.run(
    `INSERT INTO outcome (rep_id, version, kind, score, release_error_level, average_error_level, peak_error,
      rise_error_s, start_of_release_error_s, brake_off_error_s, reapplications, json)
      VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    repId,
    outcome.version,
    outcome.kind,
    numbers.score,
    numbers.releaseErrorLevel,
    numbers.averageErrorLevel,
    scored?.peakError ?? null,
    scored?.riseErrorS ?? null,
    numbers.startOfReleaseErrorS,
    scored?.keyPointErrorsS.brakeOff ?? null,
    numbers.reapplications,
    JSON.stringify(outcome),
  );
}

export function hasOutcome(db: SqlDatabase, repId: number, version: number): boolean {
  return db.get('SELECT 1 FROM outcome WHERE rep_id = ? AND version = ?', repId, version) !== null;
}

/** Oldest version first. */
export function outcomesOf(db: SqlDatabase, repId: number): RepOutcome[] {
  return db
    .all<{ json: string }>('SELECT json FROM outcome WHERE rep_id = ? ORDER BY version', repId)
    .map(({ json }) => JSON.parse(json) as RepOutcome);
}
