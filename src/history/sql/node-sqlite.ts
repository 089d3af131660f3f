import type { SqlConnection, SqlDriver } from './sql-driver.ts';

/** The part of node:sqlite in use; the type package of the oldest supported Node does not know the module. */
interface NodeSqlite {
  readonly DatabaseSync: new (file: string) => SqlConnection;
}

/** The SQLite built into Node 22.13 and later. */
export function loadNodeSqlite(): SqlDriver | { readonly unavailable: string } {
  const sqlite = quietly(() => process.getBuiltinModule('node:sqlite')) as NodeSqlite | undefined;
  if (sqlite === undefined)
    return { unavailable: `Node ${process.versions.node} has no built-in SQLite` };
  return {
    name: 'node:sqlite',
    open: (file) => new sqlite.DatabaseSync(file),
    resultCode: (error) => {
      const code = (error as { readonly errcode?: unknown }).errcode;
      return typeof code === 'number' ? code & 0xff : null;
    },
  };
}

/** Node warns on stderr that the module is experimental; the driver at the screen can do nothing about it. */
function quietly<T>(load: () => T): T {
  const emitWarning = process.emitWarning;
  process.emitWarning = () => {};
  try {
    return load();
  } finally {
    process.emitWarning = emitWarning;
  }
}
