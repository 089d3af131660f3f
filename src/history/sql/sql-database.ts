import type { SqlConnection, SqlDriver, SqlStatement, SqlValue } from './sql-driver.ts';
import { sqlProblem } from './sql-problem.ts';

/**
 * A database file: prepared statements kept, errors turned into Problems, rows given the type the caller knows them
 * to have.
 */
export class SqlDatabase {
  readonly file: string;
  readonly #driver: SqlDriver;
  readonly #connection: SqlConnection;
  readonly #statements = new Map<string, SqlStatement>();
  #open = true;

  constructor(driver: SqlDriver, file: string) {
    this.file = file;
    this.#driver = driver;
    this.#connection = this.#guard(() => driver.open(file));
  }

  exec(sql: string): void {
    this.#guard(() => this.#connection.exec(sql));
  }

  /** @returns the row id of an insert */
  run(sql: string, ...values: SqlValue[]): number {
    return this.#guard(() => Number(this.#prepare(sql).run(...values).lastInsertRowid));
  }

  get<Row>(sql: string, ...values: SqlValue[]): Row | null {
    return this.#guard(() => (this.#prepare(sql).get(...values) as Row | undefined) ?? null);
  }

  all<Row>(sql: string, ...values: SqlValue[]): Row[] {
    return this.#guard(() => this.#prepare(sql).all(...values) as Row[]);
  }

  /**
   * What is made of each row, without holding all rows at once.
   *
   * @param make may use nothing of this database
   */
  map<Row, T>(sql: string, values: readonly SqlValue[], make: (row: Row) => T): T[] {
    return this.#guard(() => {
      const made: T[] = [];
      for (const row of this.#prepare(sql).iterate(...values)) made.push(make(row as Row));
      return made;
    });
  }

  /**
   * Everything in `work`, or nothing of it. The lock for writing is taken at the start: a reader that wants to write
   * half way could not wait for another program, it would fail.
   */
  transaction<T>(work: () => T): T {
    this.exec('BEGIN IMMEDIATE');
    try {
      const result = work();
      this.exec('COMMIT');
      return result;
    } catch (error) {
      this.#rollBack();
      throw error;
    }
  }

  close(): void {
    if (!this.#open) return;
    this.#open = false;
    this.#statements.clear();
    this.#guard(() => this.#connection.close());
  }

  #prepare(sql: string): SqlStatement {
    const known = this.#statements.get(sql);
    if (known !== undefined) return known;
    const made = this.#connection.prepare(sql);
    this.#statements.set(sql, made);
    return made;
  }

  /** After some errors SQLite has rolled back by itself, and says so with another error. */
  #rollBack(): void {
    try {
      this.#connection.exec('ROLLBACK');
    } catch {
      // the first error is the one to report
    }
  }

  #guard<T>(work: () => T): T {
    try {
      return work();
    } catch (error) {
      throw sqlProblem(this.#driver.resultCode(error), this.file, error) ?? error;
    }
  }
}
