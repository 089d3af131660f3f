import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openHistory } from '../../src/history/open-history.ts';
import { openDatabase } from '../../src/history/sql/open-database.ts';
import type { SqlDriver } from '../../src/history/sql/sql-driver.ts';
import { Problem } from '../../src/problem.ts';
import { addAll, aPractice, aRep, aScore, NO_REP } from './fixtures.ts';
import { inFolder, SQL_IMPLEMENTATIONS } from './implementations.ts';

describe.each(SQL_IMPLEMENTATIONS)('packed numbers in $name', ({ drivers }) => {
  const driver = drivers[0]!() as SqlDriver;

  test('keeps the numbers of a practice packed until one of its reps is written to', () =>
    inFolder((folder) => {
      const history = openHistory(folder, { drivers });
      const practices = [1, 2].map(() => history.startPractice(aPractice()));
      const [first, second] = practices.map((id) => history.addRep(id, aRep()));
      const db = openDatabase(driver, join(folder, 'history.sqlite'));
      const packed = (): number[] =>
        db.all<{ id: number }>('SELECT practice_id AS id FROM measure_pack').map(({ id }) => id);
      expect(packed()).toEqual([]);
      history.measures({});
      expect(packed()).toEqual(practices);
      for (const write of [
        () => history.addRep(practices[0]!, aRep({ number: 2 })),
        () => history.addOutcome(first!, aScore({ version: 2 })),
        () => history.addSelfRating(first!, 'late heavy'),
        () => db.exec(`UPDATE outcome SET score = 5 WHERE rep_id = ${first}`),
        () => db.exec(`DELETE FROM outcome WHERE rep_id = ${first}`),
        () => db.exec(`UPDATE rep SET condition = 'wet' WHERE id = ${first}`),
      ]) {
        write();
        expect(packed()).toEqual(practices.slice(1));
        history.measures({});
        expect(packed()).toEqual(practices);
      }
      expect(() => history.addOutcome(second!, aScore())).toThrow(Problem);
      expect(packed()).toEqual(practices);
      db.close();
      history.close();
    }));

  test.each([
    ['of another format', 'zeroblob(200)'],
    ['cut short', 'substr(bytes, 1, length(bytes) - 1)'],
    ['empty', "x''"],
    [
      'with kinds that are no JSON',
      "CAST(substr(bytes, 1, 12) || '}' || substr(bytes, 14) AS BLOB)",
    ],
  ])('a pack %s is made again', (_, bytes) =>
    inFolder((folder) => {
      const history = openHistory(folder, { drivers });
      addAll(history, [aRep(), aRep({ number: 2, outcome: NO_REP })]);
      const expected = history.measures({});
      const db = openDatabase(driver, join(folder, 'history.sqlite'));
      db.exec(`UPDATE measure_pack SET bytes = ${bytes}`);
      expect(history.measures({})).toEqual(expected);
      expect(history.measures({})).toEqual(expected);
      db.close();
      history.close();
    }),
  );

  test('the numbers are there where packs cannot be kept', () =>
    inFolder((folder) => {
      const history = openHistory(folder, { drivers });
      addAll(history, [aRep()]);
      const db = openDatabase(driver, join(folder, 'history.sqlite'));
      db.exec(
        "CREATE TRIGGER full BEFORE INSERT ON measure_pack BEGIN SELECT raise(ABORT, 'no'); END",
      );
      expect(history.measures({})).toMatchObject([{ numbers: { score: 71.25 } }]);
      expect(db.all('SELECT * FROM measure_pack')).toEqual([]);
      db.close();
      history.close();
    }));
});
