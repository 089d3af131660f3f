import { betterSqlite } from './better-sqlite-package.ts';
import type { SqlDriver } from './sql-driver.ts';

/** Names of the result codes that mean something to a user; the library gives names, not numbers. */
const RESULT_CODES: Readonly<Record<string, number>> = {
  SQLITE_ERROR: 1,
  SQLITE_PERM: 3,
  SQLITE_BUSY: 5,
  SQLITE_LOCKED: 6,
  SQLITE_READONLY: 8,
  SQLITE_IOERR: 10,
  SQLITE_CORRUPT: 11,
  SQLITE_FULL: 13,
  SQLITE_CANTOPEN: 14,
  SQLITE_CONSTRAINT: 19,
  SQLITE_NOTADB: 26,
};

/** The optional native package, which serves Node 20. */
export function loadBetterSqlite(): SqlDriver | { readonly unavailable: string } {
  try {
    return { name: 'better-sqlite3', open: betterSqlite(), resultCode };
  } catch (error) {
    const [reason] = String((error as Error).message).split('\n');
    return { unavailable: `better-sqlite3 does not load (${reason})` };
  }
}

function resultCode(error: unknown): number | null {
  const code = (error as { readonly code?: unknown }).code;
  if (typeof code !== 'string') return null;
  // extended names such as SQLITE_IOERR_FSYNC begin with the primary one
  const primary = code.split('_').slice(0, 2).join('_');
  return RESULT_CODES[primary] ?? null;
}
