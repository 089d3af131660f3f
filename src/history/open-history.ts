import { existsSync, mkdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Problem } from '../problem.ts';
import { withFileProblems } from './file-problem.ts';
import { importJournal } from './journal/import-journal.ts';
import { JournalHistory } from './journal/journal-history.ts';
import { loadBetterSqlite } from './sql/better-sqlite.ts';
import { loadNodeSqlite } from './sql/node-sqlite.ts';
import { openDatabase } from './sql/open-database.ts';
import type { SqlDriver, SqlDriverLoader } from './sql/sql-driver.ts';
import { SqlHistory } from './sql/sql-history.ts';
import type { HistoryStore } from './store.ts';
import { syncFolder } from './sync-folder.ts';

const DATABASE = 'history.sqlite';
const JOURNAL = 'history.jsonl';

interface OpenHistoryOptions {
  /** The SQLite libraries to try, in this order; with none of them the history is a journal. */
  readonly drivers?: readonly SqlDriverLoader[];
}

/**
 * Opens the history in a folder, or starts one: in SQLite where Node has it built in or better-sqlite3 loads, else in
 * a journal, which the next start that has SQLite imports. The label says which.
 *
 * @throws Problem where the folder cannot be written or the file is damaged, newer or not ours; nothing is overwritten.
 */
export function openHistory(dataDir: string, options: OpenHistoryOptions = {}): HistoryStore {
  makeFolder(dataDir);
  const database = join(dataDir, DATABASE);
  const journal = join(dataDir, JOURNAL);
  refuseFolder(database);
  refuseFolder(journal);
  const reasons: string[] = [];
  for (const load of options.drivers ?? [loadNodeSqlite, loadBetterSqlite]) {
    const driver = load();
    if ('open' in driver) return openSql(driver, database, journal);
    reasons.push(driver.unavailable);
  }
  const why = reasons.length === 0 ? '' : `: ${reasons.join('; ')}`;
  const notice = existsSync(database) ? hiddenNotice(database, reasons) : null;
  return new JournalHistory(journal, `${journal} (journal${why})`, notice);
}

/** Like `openHistory`, but starts none: null where nothing was ever written. */
export function openExistingHistory(
  dataDir: string,
  options: OpenHistoryOptions = {},
): HistoryStore | null {
  const isThere = [DATABASE, JOURNAL].some((name) => existsSync(join(dataDir, name)));
  return isThere ? openHistory(dataDir, options) : null;
}

function openSql(driver: SqlDriver, database: string, journal: string): HistoryStore {
  const db = openDatabase(driver, database);
  try {
    importJournal(db, journal);
  } catch (error) {
    db.close();
    throw error;
  }
  return new SqlHistory(db, `${database} (${driver.name})`);
}

/** A database from a start that had SQLite; what is written now joins it at the next such start. */
function hiddenNotice(database: string, reasons: readonly string[]): string {
  const why = reasons.map((reason) => `; ${reason}`).join('');
  return `the reps in ${database} are safe but cannot be read here, new ones will join them${why}`;
}

function makeFolder(dataDir: string): void {
  withFileProblems(dataDir, () => {
    const made = mkdirSync(dataDir, { recursive: true });
    if (made !== undefined) syncFolder(dirname(made));
  });
}

function refuseFolder(path: string): void {
  if (!(statSync(path, { throwIfNoEntry: false })?.isDirectory() ?? false)) return;
  throw new Problem('a folder stands where the history is kept', {
    where: path,
    next: 'It was left as it is. Move it away, or choose another folder with --data-dir.',
  });
}
