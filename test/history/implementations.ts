import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { loadBetterSqlite } from '../../src/history/sql/better-sqlite.ts';
import { loadNodeSqlite } from '../../src/history/sql/node-sqlite.ts';
import type { SqlDriverLoader } from '../../src/history/sql/sql-driver.ts';

export interface Implementation {
  readonly name: string;
  readonly drivers: readonly SqlDriverLoader[];
}

/** The SQLite libraries that load in this Node. */
export const SQL_IMPLEMENTATIONS: readonly Implementation[] = [
  { name: 'node:sqlite', drivers: [loadNodeSqlite] },
  { name: 'better-sqlite3', drivers: [loadBetterSqlite] },
].filter(({ drivers }) => drivers.every((load) => 'open' in load()));

export const JOURNAL: Implementation = { name: 'journal', drivers: [] };

/** Runs `work` with a folder of its own that is gone afterwards. */
export function inFolder<T>(work: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-history-'));
  const clean = (): void => rmSync(folder, { recursive: true, force: true });
  try {
    const result = work(folder);
    if (result instanceof Promise) return result.finally(clean) as T;
    clean();
    return result;
  } catch (error) {
    clean();
    throw error;
  }
}
