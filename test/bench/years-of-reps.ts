import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { addDays } from '../../src/consistency/iso-week.ts';
import { gaussian, type RandomSource, seededRandom } from '../../src/drill/seeded-random.ts';
import { encodeRecord } from '../../src/history/codec/encode-record.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { SqlConnection } from '../../src/history/sql/sql-driver.ts';
import type { NewRep } from '../../src/history/store.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import { overTime } from '../../src/target/over-time.ts';
import { readTarget } from '../../src/target/read-target.ts';
import type { Target } from '../../src/target/target.ts';
import { quantiseRecord } from '../../src/trace/quantise-record.ts';
import { aPractice, aRep, RECORD } from '../history/fixtures.ts';
import { SQL_IMPLEMENTATIONS } from '../history/implementations.ts';

const DAY_MS = 86_400_000;
const REPS_A_PRACTICE = 50;
const SEED = 20261125;

/**
 * A history of so many reps up to today, four practices a week with fifty reps each, a third of the errors left at the
 * end. Only the first practice is written rep by rep; the others are copied in the file with other errors, which is
 * what they would look like.
 *
 * @param samples whether all reps keep five seconds of samples; else all but the last practice keep only a few
 */
export function yearsOfReps(folder: string, reps: number, samples: 'whole' | 'few'): void {
  const practices = reps / REPS_A_PRACTICE;
  const today = new Date().toISOString().slice(0, 10);
  const first = addDays(today, -Math.floor(1.75 * (practices - 1)));
  firstPractice(folder, Date.parse(`${first}T00:30:00Z`));
  const db = openRaw(join(folder, 'history.sqlite'));
  db.exec(`BEGIN; CREATE TEMP TABLE copy AS WITH RECURSIVE n(i) AS
    (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ${practices - 1}) SELECT i FROM n`);
  for (const [table, changes] of Object.entries(changesOf(practices, samples)))
    copyRows(db, table, changes);
  db.exec('COMMIT; PRAGMA wal_checkpoint(TRUNCATE)');
  db.close();
}

function firstPractice(folder: string, utcMs: number): void {
  const target = hairpin();
  const random = seededRandom(SEED);
  const history = openHistory(folder);
  const at = { utcMs, zone: 'UTC', offsetMin: 0 };
  const practice = history.startPractice(aPractice({ startedAt: at }));
  for (let i = 0; i < REPS_A_PRACTICE; i++)
    history.addRep(practice, { ...drivenRep(target, i, random), at });
  history.close();
}

function hairpin(): Target {
  const file = new URL('../../profiles/targets/hairpin.yaml', import.meta.url);
  return overTime(readTarget(readFileSync(file, 'utf8'), 'hairpin.yaml'));
}

/** Five seconds at 1 kHz that follow the target too early or late, too light or heavy. */
function drivenRep(target: Target, i: number, random: RandomSource): NewRep {
  const [lateS, factor] = [0.05 * gaussian(random), 1 + 0.08 * gaussian(random)];
  const timeS = Float64Array.from({ length: 5000 }, (_, k) => k / 1000);
  const value = timeS.map((t) => Math.min(1, Math.max(0, factor * target.level.at(t - lateS))));
  const record = quantiseRecord({ ...RECORD, brake: { timeS, value }, endS: 5 });
  const feedback = i < 5 ? 'first-of-day' : i % 2 === 0 ? 'hidden' : 'shown';
  const felt = `${['early', 'right', 'late'][i % 3]} ${['light', 'right', 'heavy'][i % 3]}`;
  return aRep({
    record,
    feedback,
    targetId: target.id,
    targetVersion: target.version,
    selfRating: feedback === 'hidden' ? felt : null,
    outcome: scoreRep(record, target),
  });
}

/** What differs in copy `i` of a row, as SQL. */
function changesOf(
  practices: number,
  samples: 'whole' | 'few',
): Readonly<Record<string, Readonly<Record<string, string>>>> {
  const time = `utc_ms + CAST(1.75 * i AS INTEGER) * ${DAY_MS}`;
  const repId = `${REPS_A_PRACTICE} * i`;
  const origin = "origin || ' ' || i";
  const left = `(1 - 0.67 * i / ${practices})`;
  const noise = '((i * 7919 + rep_id * 104729) % 1000 / 1000.0)';
  const few = Buffer.from(encodeRecord(RECORD)).toString('hex');
  const bytes = samples === 'whole' ? 'bytes' : `iif(i = ${practices - 1}, bytes, x'${few}')`;
  return {
    practice: { id: 'id + i', origin, utc_ms: time },
    rep: { origin, id: `id + ${repId}`, practice_id: 'practice_id + i', utc_ms: time },
    samples: { rep_id: `rep_id + ${repId}`, bytes },
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
function openRaw(file: string): SqlConnection {
  const driver = SQL_IMPLEMENTATIONS[0]?.drivers[0]?.();
  if (driver === undefined || !('open' in driver)) throw new Error('no SQLite here');
  return driver.open(file);
}
