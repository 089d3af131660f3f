export type SqlValue = string | number | null | Uint8Array;

/** A prepared statement. Parameters are bound in order. */
export interface SqlStatement {
  run(...values: SqlValue[]): { readonly lastInsertRowid: number | bigint };
  get(...values: SqlValue[]): unknown;
  all(...values: SqlValue[]): unknown[];
  /** Row by row; no other statement may run on the connection meanwhile. */
  iterate(...values: SqlValue[]): Iterable<unknown>;
}

/** An open database: what node:sqlite and better-sqlite3 have in common. */
export interface SqlConnection {
  exec(sql: string): void;
  prepare(sql: string): SqlStatement;
  close(): void;
}

/** One of the SQLite libraries. */
export interface SqlDriver {
  readonly name: string;
  /** Opens or creates the file. */
  open(file: string): SqlConnection;
  /** The primary result code of SQLite (https://www.sqlite.org/rescode.html) in what it threw; null for other errors. */
  resultCode(error: unknown): number | null;
}

/** Loads a library, or says in one sentence why it does not load here. */
export type SqlDriverLoader = () => SqlDriver | { readonly unavailable: string };
