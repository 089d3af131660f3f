import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { openHistory } from '../../src/history/open-history.ts';
import { openDatabase } from '../../src/history/sql/open-database.ts';
import type { SqlDriver } from '../../src/history/sql/sql-driver.ts';
import { aPractice, aRep, aScore } from './fixtures.ts';
import { inFolder, SQL_IMPLEMENTATIONS } from './implementations.ts';

describe.each(SQL_IMPLEMENTATIONS)('kept answers in $name', ({ drivers }) => {
  const driver = drivers[0]!() as SqlDriver;

  test('are there until something of their practice is written', () =>
    inFolder((folder) => {
      const history = openHistory(folder, { drivers });
      const practices = [1, 2].map(() => history.startPractice(aPractice()));
      const [first] = practices.map((id) => history.addRep(id, aRep()));
      const keep = (): void =>
        practices.forEach((id, i) => {
          history.keepAnswer(`answer ${i}`, id, `of practice ${i}`);
        });
      const kept = (): (string | null)[] => [0, 1].map((i) => history.keptAnswer(`answer ${i}`));
      expect(kept()).toEqual([null, null]);
      const db = openDatabase(driver, join(folder, 'history.sqlite'));
      for (const write of [
        () => history.addRep(practices[0]!, aRep({ number: 2 })),
        () => history.addOutcome(first!, aScore({ version: 2 })),
        () => history.addSelfRating(first!, 'late heavy'),
        () => db.exec(`UPDATE outcome SET score = 5 WHERE rep_id = ${first}`),
        () => db.exec(`DELETE FROM outcome WHERE rep_id = ${first}`),
        () => db.exec(`UPDATE rep SET condition = 'wet' WHERE id = ${first}`),
        () => db.exec(`DELETE FROM samples; DELETE FROM rep WHERE id = ${first}`),
      ]) {
        keep();
        expect(kept()).toEqual(['of practice 0', 'of practice 1']);
        write();
        expect(kept()).toEqual([null, 'of practice 1']);
      }
      db.close();
      history.close();
    }));

  test('of a name are of the last practice that had one', () =>
    inFolder((folder) => {
      const history = openHistory(folder, { drivers });
      const [first, second] = [1, 2].map(() => history.startPractice(aPractice()));
      history.keepAnswer('spread', first!, 'old');
      history.keepAnswer('spread', second!, 'new');
      history.addRep(first!, aRep());
      expect(history.keptAnswer('spread')).toBe('new');
      history.addRep(second!, aRep());
      expect(history.keptAnswer('spread')).toBeNull();
      history.close();
    }));

  test('are done without where they cannot be kept', () =>
    inFolder((folder) => {
      const history = openHistory(folder, { drivers });
      history.keepAnswer('spread', 99, 'of no practice');
      expect(history.keptAnswer('spread')).toBeNull();
      history.close();
    }));
});

test('a journal keeps none', () =>
  inFolder((folder) => {
    const history = openHistory(folder, { drivers: [] });
    history.keepAnswer('spread', history.startPractice(aPractice()), 'text');
    expect(history.keptAnswer('spread')).toBeNull();
    history.close();
  }));
