import { createRequire } from 'node:module';
import type { SqlConnection } from './sql-driver.ts';

type BetterSqlite = new (
  file: string,
  options?: { readonly nativeBinding: object },
) => SqlConnection;

const require = createRequire(import.meta.url);
/** What npm has put there, by a name that the build does not know: it takes in what `require` asks for. */
const installed = createRequire(import.meta.url);

/**
 * What opens a database by the optional package. The JavaScript of its dozen files takes longer to load than a year of
 * practice to read, so it comes with the built program, and the native part that fits from where npm has put it.
 *
 * @throws Error where the package is not installed or its native part does not load
 */
export function betterSqlite(): (file: string) => SqlConnection {
  if (installed('better-sqlite3/package.json').version !== versionTakenIn()) return asInstalled();
  const Database = require('better-sqlite3/lib/index.js') as BetterSqlite;
  const nativeBinding = installed('better-sqlite3/build/Release/better_sqlite3.node') as object;
  return (file) => new Database(file, { nativeBinding });
}

function versionTakenIn(): string {
  return require('better-sqlite3/package.json').version;
}

/** Its native part is looked for, and loads, with the first database, so one is tried. */
function asInstalled(): (file: string) => SqlConnection {
  const Database = installed('better-sqlite3') as BetterSqlite;
  new Database(':memory:').close();
  return (file) => new Database(file);
}
