import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openExistingHistory, openHistory } from '../../src/history/open-history.ts';
import { APPLICATION_ID, MIGRATIONS } from '../../src/history/sql/migrations.ts';
import { openDatabase } from '../../src/history/sql/open-database.ts';
import type { SqlDriver } from '../../src/history/sql/sql-driver.ts';
import { SqlHistory } from '../../src/history/sql/sql-history.ts';
import { Problem } from '../../src/problem.ts';
import { addAll, aNote, aRep, LIVE_START, NO_REP } from './fixtures.ts';
import { inFolder, SQL_IMPLEMENTATIONS } from './implementations.ts';
import { fiveSecondRep } from './rep-signals.ts';

describe.each(SQL_IMPLEMENTATIONS)('the SQLite file by $name', ({ drivers }) => {
  const driver = drivers[0]!() as SqlDriver;

  /** What opening says, and that it left the file as it was. */
  function refusal(folder: string): Problem {
    const file = join(folder, 'history.sqlite');
    const before = readFileSync(file);
    try {
      openHistory(folder, { drivers }).close();
    } catch (error) {
      expect(error).toBeInstanceOf(Problem);
      expect(readFileSync(file).equals(before)).toBe(true);
      expect((error as Problem).where).toBe(file);
      expect((error as Problem).exitCode).toBe(1);
      return error as Problem;
    }
    return expect.unreachable('it was opened');
  }

  function written(folder: string): string {
    const history = openHistory(folder, { drivers });
    addAll(history, [
      aRep(),
      aRep({ outcome: NO_REP }),
      aRep({ voided: 'aborted', outcome: null }),
    ]);
    history.close();
    return join(folder, 'history.sqlite');
  }

  test('syncs every commit, logs ahead, and is marked as ours', () =>
    inFolder((folder) => {
      const db = openDatabase(driver, join(folder, 'x.sqlite'));
      expect(db.get('PRAGMA journal_mode')).toMatchObject({ journal_mode: 'wal' });
      expect(db.get('PRAGMA synchronous')).toMatchObject({ synchronous: 2 }); // FULL
      expect(db.get('PRAGMA fullfsync')).toMatchObject({ fullfsync: 1 });
      expect(db.get('PRAGMA foreign_keys')).toMatchObject({ foreign_keys: 1 });
      expect(db.get('PRAGMA user_version')).toMatchObject({
        user_version: MIGRATIONS.length,
      });
      expect(db.get('PRAGMA application_id')).toMatchObject({
        application_id: Buffer.from('EbBl').readUInt32BE(),
      });
      db.close();
    }));

  test('a transaction that fails leaves nothing, and the file usable', () =>
    inFolder((folder) => {
      const db = openDatabase(driver, join(folder, 'x.sqlite'));
      const add = "INSERT INTO samples (rep_id, bytes) VALUES (7, x'00')"; // there is no rep 7
      expect(() => db.transaction(() => db.run(add))).toThrow(/FOREIGN KEY/);
      expect(db.all('SELECT * FROM samples')).toEqual([]);
      expect(db.transaction(() => 5)).toBe(5);
      db.close();
    }));

  test('statistics read no page of samples', () =>
    inFolder((folder) => {
      const file = written(folder);
      const db = openDatabase(driver, file);
      db.exec('DROP TABLE samples');
      db.close();
      const history = openHistory(folder, { drivers });
      expect(history.measures({})).toHaveLength(3);
      expect([...history.reps({})]).toHaveLength(3);
      history.close();
    }));

  test.each([
    ['a text', Buffer.from('reps: none\n'.repeat(200))],
    ['a few bytes', Buffer.from('hm')],
    ['zeros', Buffer.alloc(8192)],
  ])('%s under its name is refused and kept', (_, bytes) =>
    inFolder((folder) => {
      writeFileSync(join(folder, 'history.sqlite'), bytes);
      expect(refusal(folder).message).toMatch(/damaged/);
    }),
  );

  test('an empty file is a history not yet begun', () =>
    inFolder((folder) => {
      writeFileSync(join(folder, 'history.sqlite'), '');
      const history = openHistory(folder, { drivers });
      expect(addAll(history, [aRep()])).toHaveLength(1);
      history.close();
    }));

  test('the database of another program is refused and kept', () =>
    inFolder((folder) => {
      const other = driver.open(join(folder, 'history.sqlite'));
      other.exec('CREATE TABLE recipe (name TEXT)');
      other.close();
      expect(refusal(folder).message).toMatch(/not a history of ebbline/);
    }));

  test('a newer schema is refused and kept', () =>
    inFolder((folder) => {
      const other = driver.open(written(folder));
      other.exec(`PRAGMA user_version = ${MIGRATIONS.length + 1}`);
      other.close();
      const problem = refusal(folder);
      expect(problem.message).toContain(
        `schema ${MIGRATIONS.length + 1}, this program knows ${MIGRATIONS.length}`,
      );
      expect(problem.next).toMatch(/newer version/);
    }));

  test('a folder under its name, a file in the place of the folder', () =>
    inFolder((folder) => {
      mkdirSync(join(folder, 'a', 'history.sqlite'), { recursive: true });
      expect(() => openHistory(join(folder, 'a'), { drivers })).toThrow(/a folder stands/);
      writeFileSync(join(folder, 'b'), 'x');
      expect(() => openHistory(join(folder, 'b'), { drivers })).toThrow(/a file stands/);
      expect(() => openHistory(join(folder, 'b', 'c'), { drivers })).toThrow(Problem);
    }));

  test('another program that holds the file for long is named, and the rep can be tried again', () =>
    inFolder((folder) => {
      const history = openHistory(folder, { drivers });
      const db = openDatabase(driver, join(folder, 'history.sqlite'));
      db.exec('PRAGMA busy_timeout = 0; BEGIN IMMEDIATE');
      const third = openDatabase(driver, join(folder, 'history.sqlite'));
      third.exec('PRAGMA busy_timeout = 0');
      expect(() => third.transaction(() => 0)).toThrow(/another program/);
      db.exec('COMMIT');
      expect(addAll(history, [aRep()])).toHaveLength(1);
      for (const one of [third, db, history]) one.close();
    }));

  test('a full disk is named, keeps what was finished, and the rep can be tried again', () =>
    inFolder((folder) => {
      const db = openDatabase(driver, join(folder, 'history.sqlite'));
      const history = new SqlHistory(db, 'x');
      const [kept] = addAll(history, [aRep()]);
      const large = aRep({ number: 2, record: fiveSecondRep(5, { bits: 16, counts: 3 }) });
      const pages = db.get<{ page_count: number }>('PRAGMA page_count')?.page_count ?? 0;
      db.exec(`PRAGMA max_page_count = ${pages}`);
      expect(() => history.addRep(1, large)).toThrow(/disk is full/);
      expect([...history.reps({})].map(({ id }) => id)).toEqual([kept]);
      db.exec('PRAGMA max_page_count = 100000');
      history.addRep(1, large);
      expect([...history.reps({})].map(({ number }) => number)).toEqual([1, 2]);
      history.close();
    }));

  test('a file of the first schema keeps its reps, which had no live car, and takes new ones', () =>
    inFolder((folder) => {
      const old = driver.open(join(folder, 'history.sqlite'));
      old.exec(`${MIGRATIONS[0]}; PRAGMA application_id = ${APPLICATION_ID}; PRAGMA user_version = 1;
        INSERT INTO practice VALUES (1, NULL, 'Kim', 5, 'UTC', 0, 'hid', 'left', 'boots', 'c', 'force', NULL);
        INSERT INTO rep VALUES (1, NULL, 1, 5, 'UTC', 0, NULL, NULL, NULL, NULL, 'hairpin', 'v', 1, 1, 'block',
          'blocked', 'shown', NULL, NULL)`);
      old.close();
      const history = openHistory(folder, { drivers });
      history.addRep(1, aRep({ number: 2, live: LIVE_START }));
      expect([...history.reps({})].map(({ number, live }) => [number, live])).toEqual([
        [1, null],
        [2, LIVE_START],
      ]);
      history.addNote(aNote({ repId: 1 }));
      expect(history.notes({}).map(({ text }) => text)).toEqual(['bump loads the rear']);
      history.close();
    }));

  test('copies of an old file give the same identities to what has none, and different things different ones', () =>
    inFolder((folder) => {
      const origins = ['a', 'b'].map((name) => {
        mkdirSync(join(folder, name));
        const old = driver.open(join(folder, name, 'history.sqlite'));
        const practice = `NULL, 'Kim', 5, 'UTC', 0, 'hid', 'left', 'boots', 'c', 'force', NULL`;
        const rep = `NULL, 1, 5, 'UTC', 0, NULL, NULL, NULL, NULL, 'hairpin', 'v', 1, 1, 'block',
          'blocked', 'shown', NULL, NULL, NULL`;
        const note = `NULL, 5, 'UTC', 0, 'Kim', 'x', NULL, NULL, NULL, NULL, NULL`;
        old.exec(`${MIGRATIONS.slice(0, 3).join(';')}; PRAGMA application_id = ${APPLICATION_ID};
          PRAGMA user_version = 3; INSERT INTO practice VALUES (1, ${practice}), (2, ${practice});
          INSERT INTO practice VALUES (3, 'from-a-journal', 'Kim', 5, 'UTC', 0, 'hid', 'left', 'boots', 'c', 'force', NULL);
          INSERT INTO rep VALUES (1, ${rep}), (2, ${rep}); INSERT INTO note VALUES (1, ${note}), (2, ${note})`);
        old.close();
        const history = openHistory(join(folder, name), { drivers });
        const snapshot = history.snapshot();
        const all = [snapshot.practices({}), snapshot.reps({}), snapshot.notes({})];
        const found = all.map((some) => [...some].map(({ origin }) => origin));
        snapshot.close();
        history.close();
        return found;
      });
      expect(origins[0]).toEqual(origins[1]);
      expect(origins[0]!.map((some) => new Set(some).size)).toEqual([3, 2, 2]);
      expect(origins[0]![0]).toContain('from-a-journal');
    }));

  test('looking for a history makes none', () =>
    inFolder((folder) => {
      expect(openExistingHistory(folder, { drivers })).toBeNull();
      expect(openExistingHistory(join(folder, 'none'), { drivers })).toBeNull();
      expect(readdirSync(folder)).toEqual([]);
      written(folder);
      const history = openExistingHistory(folder, { drivers });
      expect([...(history?.reps({}) ?? [])]).toHaveLength(3);
      history?.close();
    }));

  test('whatever is damaged, the answer is data or a problem', () =>
    inFolder((folder) => {
      const bytes = readFileSync(written(folder));
      const place = fc.nat(bytes.length - 1);
      const damage = fc.tuple(place, fc.uint8Array({ minLength: 1, maxLength: 600 }));
      fc.assert(
        fc.property(
          fc.array(damage, { minLength: 1, maxLength: 3 }),
          fc.option(place),
          (all, cut) =>
            inFolder((copy) => {
              const damaged = Buffer.from(bytes);
              for (const [at, garbage] of all) damaged.set(garbage.slice(0, bytes.length - at), at);
              writeFileSync(join(copy, 'history.sqlite'), damaged.subarray(0, cut ?? bytes.length));
              readEverything(copy);
            }),
        ),
        // A row that refers to a practice which the damage took away.
        { numRuns: 150, examples: [[[[16390, Uint8Array.of(192, 0)]], null]] },
      );
    }));

  function readEverything(folder: string): void {
    const orProblem = <T>(read: () => T): T | null => {
      try {
        return read();
      } catch (error) {
        if (!(error instanceof Problem)) throw error;
        return null;
      }
    };
    const history = orProblem(() => openHistory(folder, { drivers }));
    if (history === null) return;
    orProblem(() => history.practices());
    orProblem(() => [...history.reps({})]);
    orProblem(() => history.measures({}));
    for (const id of [1, 2, 3]) orProblem(() => history.record(id));
    orProblem(() => addAll(history, [aRep()]));
    history.close();
  }
});
