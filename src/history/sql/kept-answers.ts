import type { SqlDatabase } from './sql-database.ts';

/**
 * Answers that take long to work out again. The truth is in the rows: triggers of the database drop an answer in the
 * transaction that writes a rep, a rating or an outcome of its practice.
 */
export function keptAnswer(db: SqlDatabase, name: string): string | null {
  const row = db.get<{ text: string }>('SELECT text FROM kept_answer WHERE name = ?', name);
  return row?.text ?? null;
}

/** Where the file cannot be written the next who asks works it out again. */
export function keepAnswer(db: SqlDatabase, name: string, practiceId: number, text: string): void {
  try {
    db.run(
      'INSERT OR REPLACE INTO kept_answer (name, practice_id, text) VALUES (?, ?, ?)',
      name,
      practiceId,
      text,
    );
  } catch {
    // who reads the rows meets what is wrong with the file
  }
}
