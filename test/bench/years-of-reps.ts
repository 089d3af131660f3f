import { join } from 'node:path';
import { openHistory } from '../../src/history/open-history.ts';
import type { SqlConnection } from '../../src/history/sql/sql-driver.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import { aPractice, aRep, aScore, EVENING_MS } from '../history/fixtures.ts';
import { SQL_IMPLEMENTATIONS } from '../history/implementations.ts';

const DAY_MS = 86_400_000;
const REPS_A_PRACTICE = 50;

/**
 * A history of so many reps, four practices a week with fifty reps each, a third of the errors left at the end. Only
 * the first practice is written rep by rep; the others are copied in the file, which is what they would look like.
 */
export function yearsOfReps(folder: string, reps: number, record: RepRecord): void {
  const history = openHistory(folder);
  const practices = reps / REPS_A_PRACTICE;
  const at = {
    utcMs: EVENING_MS - Math.floor(practices * 1.75) * DAY_MS,
    zone: 'UTC',
    offsetMin: 0,
  };
  const practice = history.startPractice(aPractice({ startedAt: at }));
  for (let i = 0; i < REPS_A_PRACTICE; i++)
    history.addRep(
      practice,
      aRep({
        at,
        record,
        feedback: i < 5 ? 'first-of-day' : i % 2 === 0 ? 'hidden' : 'shown',
        outcome: aScore(),
      }),
    );
  history.close();
  const db = openRaw(join(folder, 'history.sqlite'));
  db.exec(`BEGIN; CREATE TEMP TABLE copy AS WITH RECURSIVE n(i) AS
    (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ${practices - 1}) SELECT i FROM n`);
  for (const [table, changes] of Object.entries(changesOf(practices))) copyRows(db, table, changes);
  db.exec('COMMIT; PRAGMA wal_checkpoint(TRUNCATE)');
  db.close();
}

/** What differs in copy `i` of a row, as SQL. */
function changesOf(practices: number): Readonly<Record<string, Readonly<Record<string, string>>>> {
  const time = `utc_ms + CAST(1.75 * i AS INTEGER) * ${DAY_MS}`;
  const repId = `${REPS_A_PRACTICE} * i`;
  const left = `(1 - 0.67 * i / ${practices})`;
  const noise = '((i * 7919 + rep_id * 104729) % 1000 / 1000.0)';
  return {
    practice: { id: 'id + i', utc_ms: time },
    rep: { id: `id + ${repId}`, practice_id: 'practice_id + i', utc_ms: time },
    samples: { rep_id: `rep_id + ${repId}` },
    outcome: {
      rep_id: `rep_id + ${repId}`,
      release_error_level: `release_error_level * ${left} * (0.7 + 0.6 * ${noise})`,
      average_error_level: `0.05 * ${left} * (${noise} - 0.5)`,
    },
  };
}

function copyRows(
  db: SqlConnection,
  table: string,
  changes: Readonly<Record<string, string>>,
): void {
  const info = db.prepare(`SELECT name FROM pragma_table_info('${table}')`).all();
  const names = info.map((row) => (row as { name: string }).name);
  const values = names.map((name) => changes[name] ?? name);
  db.exec(`INSERT INTO ${table} (${names.join()}) SELECT ${values.join()} FROM ${table}, copy`);
}

/** The file without this program's statements. */
export function openRaw(file: string): SqlConnection {
  const driver = SQL_IMPLEMENTATIONS[0]?.drivers[0]?.();
  if (driver === undefined || !('open' in driver)) throw new Error('no SQLite here');
  return driver.open(file);
}
