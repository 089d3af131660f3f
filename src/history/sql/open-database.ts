import { Problem } from '../../problem.ts';
import { APPLICATION_ID, MIGRATIONS } from './migrations.ts';
import { SqlDatabase } from './sql-database.ts';
import type { SqlDriver } from './sql-driver.ts';

/**
 * Opens or creates the history's database and brings it to this program's schema. A file that is not ours, damaged,
 * or newer is refused before anything is written.
 *
 * @throws Problem
 */
export function openDatabase(driver: SqlDriver, file: string): SqlDatabase {
  const db = new SqlDatabase(driver, file);
  try {
    // Another program's transaction is over in milliseconds; five seconds bridge a disk that has to wake up.
    db.exec('PRAGMA busy_timeout = 5000');
    checkIdentity(db);
    configure(db);
    migrate(db);
    return db;
  } catch (error) {
    db.close();
    throw error;
  }
}

function checkIdentity(db: SqlDatabase): void {
  const isNew = objectCount(db) === 0 && pragma(db, 'user_version') === 0;
  if (!isNew && pragma(db, 'application_id') !== APPLICATION_ID)
    throw new Problem('this database is not a history of ebbline', {
      where: db.file,
      next: 'It was left as it is. Move it away, or choose another folder with --data-dir.',
    });
  const schema = pragma(db, 'user_version');
  if (schema > MIGRATIONS.length)
    throw new Problem(
      `the history has schema ${schema}, this program knows ${MIGRATIONS.length} and older`,
      {
        where: db.file,
        next: 'It was left as it is. Use the newer version of ebbline that wrote it.',
      },
    );
}

/**
 * Write-ahead log: one program writes while others read. `synchronous = FULL` syncs the log at every commit, so that a
 * finished rep survives not only the end of the process (the system's cache would do for that, as with NORMAL) but
 * also a power cut. It costs one sync per rep, in the pause between two. `fullfsync` asks the same of macOS, whose
 * plain fsync leaves data in the drive's own cache; elsewhere it does nothing.
 */
function configure(db: SqlDatabase): void {
  const { journal_mode } = db.get<{ journal_mode: string }>('PRAGMA journal_mode') ?? {};
  if (journal_mode !== 'wal') db.exec('PRAGMA journal_mode = WAL');
  db.exec('PRAGMA synchronous = FULL; PRAGMA fullfsync = ON; PRAGMA foreign_keys = ON');
}

function migrate(db: SqlDatabase): void {
  if (pragma(db, 'user_version') === MIGRATIONS.length) return;
  db.transaction(() => {
    // read again under the lock: another program may have been faster
    for (const script of MIGRATIONS.slice(pragma(db, 'user_version'))) db.exec(script);
    db.exec(
      `PRAGMA application_id = ${APPLICATION_ID}; PRAGMA user_version = ${MIGRATIONS.length}`,
    );
  });
}

function pragma(db: SqlDatabase, name: 'user_version' | 'application_id'): number {
  return db.get<Record<string, number>>(`PRAGMA ${name}`)?.[name] ?? 0;
}

function objectCount(db: SqlDatabase): number {
  return db.get<{ n: number }>('SELECT count(*) AS n FROM sqlite_schema')?.n ?? 0;
}
