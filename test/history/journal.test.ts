import {
  appendFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { journalLine, parseJournalLine } from '../../src/history/journal/journal-line.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { HistoryStore, NewRep } from '../../src/history/store.ts';
import { Problem } from '../../src/problem.ts';
import { addAll, aNote, aPractice, aRep, aScore, NO_REP, RECORD } from './fixtures.ts';
import { inFolder, SQL_IMPLEMENTATIONS } from './implementations.ts';

const journal = (folder: string): HistoryStore => openHistory(folder, { drivers: [] });
const file = (folder: string): string => join(folder, 'history.jsonl');
const numbers = (history: HistoryStore): number[] =>
  [...history.reps({})].map(({ number }) => number);

test('a line is JSON with the CRC-32 of its entry', () => {
  const line = journalLine({ kind: 'practice', origin: 'a', start: aPractice() });
  expect(line.endsWith('\n')).toBe(true);
  const { ebbline, crc, entry } = JSON.parse(line);
  expect(ebbline).toBe(1);
  expect(crc).toBe(crc32(JSON.stringify(entry)));
  expect(entry).toEqual({ kind: 'practice', origin: 'a', start: aPractice() });
});

test('a rep written before there was a live car has none', () => {
  const { record: _, live: __, targetChange: ___, ...rep } = aRep();
  const line = journalLine({
    kind: 'rep',
    origin: 'b',
    practice: 'a',
    rep: rep as NewRep,
    samples: '',
  });
  expect(parseJournalLine(line.trimEnd(), 'here')).toMatchObject({
    rep: { ...rep, live: null, targetChange: null },
  });
});

test('says why it is a journal', () =>
  inFolder((folder) => {
    const history = openHistory(folder, {
      drivers: [() => ({ unavailable: 'the moon is full' }), () => ({ unavailable: 'so it is' })],
    });
    expect(history.label).toBe(`${file(folder)} (journal: the moon is full; so it is)`);
    expect(history.notice).toBeNull();
    history.close();
  }));

test('says that a database beside it cannot be read, and its reps join that database later', () =>
  inFolder((folder) => {
    for (const { drivers } of SQL_IMPLEMENTATIONS) {
      const sql = openHistory(folder, { drivers });
      addAll(sql, [aRep({ number: 1 })]);
      expect(sql.notice).toBeNull();
      sql.close();
    }
    const history = openHistory(folder, { drivers: [() => ({ unavailable: 'the moon is full' })] });
    expect(history.notice).toMatch(
      /history\.sqlite are safe but cannot be read.*; the moon is full$/,
    );
    expect(numbers(history)).toEqual([]);
    addAll(history, [aRep({ number: 2 })]);
    history.close();
    const again = openHistory(folder);
    expect(numbers(again)).toEqual([...SQL_IMPLEMENTATIONS.map(() => 1), 2]);
    again.close();
  }));

test('writes nothing before there is something to write', () =>
  inFolder((folder) => {
    journal(folder).close();
    expect(readdirSync(folder)).toEqual([]);
  }));

test('a line cut short anywhere is passed over, and the next rep is not', () =>
  inFolder((folder) => {
    const first = journal(folder);
    const whole = (() => {
      const practice = first.startPractice(aPractice());
      first.addRep(practice, aRep({ number: 1 }));
      const kept = readFileSync(file(folder)).length;
      first.addRep(practice, aRep({ number: 2 }));
      return { kept, bytes: readFileSync(file(folder)) };
    })();
    first.close();
    fc.assert(
      fc.property(fc.integer({ min: whole.kept, max: whole.bytes.length - 1 }), (cut) => {
        writeFileSync(file(folder), whole.bytes);
        truncateSync(file(folder), cut);
        const history = journal(folder);
        // without its line feed alone a line is whole, but was not yet reported as kept: both are right
        if (cut < whole.bytes.length - 1) expect(numbers(history)).toEqual([1]);
        history.addRep(1, aRep({ number: 3 }));
        expect(numbers(history).filter((number) => number !== 2)).toEqual([1, 3]);
        history.close();
        const again = journal(folder);
        expect(numbers(again).filter((number) => number !== 2)).toEqual([1, 3]);
        again.close();
      }),
      { numRuns: 30, examples: [[whole.bytes.length - 1], [whole.kept + 1], [whole.kept]] },
    );
  }));

test('zeros that a power cut left at the end are passed over', () =>
  inFolder((folder) => {
    const history = journal(folder);
    addAll(history, [aRep()]);
    appendFileSync(file(folder), Buffer.alloc(5000));
    const again = journal(folder);
    again.addRep(1, aRep({ number: 2 }));
    expect(numbers(again)).toEqual([1, 2]);
    expect(numbers(history)).toEqual([1, 2]);
    for (const one of [history, again]) one.close();
  }));

test('damage inside a line is a problem that names the place, and nothing is written', () =>
  inFolder((folder) => {
    const history = journal(folder);
    addAll(history, [aRep(), aRep({ number: 2 })]);
    history.close();
    const bytes = readFileSync(file(folder));
    const second = bytes.indexOf(10) + 1;
    fc.assert(
      fc.property(fc.integer({ min: second + 30, max: bytes.indexOf(10, second) - 20 }), (at) => {
        const damaged = Buffer.from(bytes);
        damaged[at]! ^= 1;
        writeFileSync(file(folder), damaged);
        const where = `history.jsonl, byte ${second}`;
        for (const drivers of [[], ...SQL_IMPLEMENTATIONS.map((one) => one.drivers)]) {
          const attempt = (): unknown => openHistory(folder, { drivers });
          expect(attempt).toThrow(Problem);
          expect(attempt).toThrow(
            expect.objectContaining({ where: expect.stringContaining(where) }),
          );
        }
        expect(readFileSync(file(folder)).equals(damaged)).toBe(true);
      }),
      { numRuns: 20 },
    );
  }));

test('arbitrary text is an unfinished line or a problem', () => {
  expect(parseJournalLine('', 'x')).toBeNull();
  expect(() => parseJournalLine('reps: none', 'x')).toThrow(Problem);
  expect(() => parseJournalLine('{"ebbline":2,"crc":1,"entry":{},"end":true}', 'x')).toThrow(
    /version 2/,
  );
  fc.assert(
    fc.property(fc.string(), fc.constantFrom('', ',"end":true}'), (text, end) => {
      try {
        expect(parseJournalLine(text + end, 'x')).toBeNull();
      } catch (error) {
        expect(error).toBeInstanceOf(Problem);
      }
    }),
  );
});

test('a folder under its name is a problem', () =>
  inFolder((folder) => {
    mkdirSync(file(folder));
    expect(() => journal(folder)).toThrow(/a folder stands/);
  }));

test.each(SQL_IMPLEMENTATIONS)('is imported by the next start that has $name', ({ drivers }) =>
  inFolder((folder) => {
    const history = journal(folder);
    const ids = addAll(history, [
      aRep(),
      aRep({ number: 2, outcome: NO_REP }),
      aRep({ number: 3, voided: 'aborted', outcome: null }),
    ]);
    history.addOutcome(ids[0]!, aScore({ version: 2, score: 55 }));
    history.addSelfRating(ids[0]!, 'late heavy');
    const [practices, reps] = [history.practices(), [...history.reps({})]];
    history.close();

    const imported = openHistory(folder, { drivers });
    expect(imported.practices()).toEqual(practices);
    expect([...imported.reps({})]).toEqual(reps);
    expect(imported.record(1)).toStrictEqual(RECORD);
    imported.close();
    expect(readdirSync(folder).sort()).toEqual(['history.jsonl.imported', 'history.sqlite']);
  }),
);

test.each(SQL_IMPLEMENTATIONS)('is imported once, whatever goes wrong: $name', ({ drivers }) =>
  inFolder((folder) => {
    const history = journal(folder);
    const [id] = addAll(history, [aRep(), aRep({ number: 2 })]);
    history.addSelfRating(id!, 'late heavy');
    history.close();
    openHistory(folder, { drivers }).close();
    // as if the program had ended between the import and the renaming
    renameSync(join(folder, 'history.jsonl.imported'), file(folder));
    const again = openHistory(folder, { drivers });
    expect(numbers(again)).toEqual([1, 2]);
    expect(again.practices()).toHaveLength(1);
    again.close();
  }),
);

test.each(SQL_IMPLEMENTATIONS)(
  'an import takes each note once, with its rep: $name',
  ({ drivers }) =>
    inFolder((folder) => {
      const writer = journal(folder);
      const [rep] = addAll(writer, [aRep()]);
      const about = writer.addNote(aNote({ repId: rep! }));
      writer.addNote(aNote({ text: 'of no rep' }));
      expect(about).toBe(1);
      writer.close();
      const bytes = readFileSync(file(folder));
      openHistory(folder, { drivers }).close();
      writeFileSync(file(folder), bytes);
      const all = openHistory(folder, { drivers });
      const [{ id } = { id: null }] = [...all.reps({})];
      expect(all.notes({}).map(({ text, repId }) => [text, repId])).toEqual([
        ['bump loads the rear', id],
        ['of no rep', null],
      ]);
      all.close();
    }),
);

test.each(SQL_IMPLEMENTATIONS)('two imports keep two files: $name', ({ drivers }) =>
  inFolder((folder) => {
    for (const number of [1, 2]) {
      const history = journal(folder);
      addAll(history, [aRep({ number })]);
      history.close();
      openHistory(folder, { drivers }).close();
    }
    const all = openHistory(folder, { drivers });
    expect(numbers(all)).toEqual([1, 2]);
    all.close();
    expect(
      readdirSync(folder)
        .filter((name) => name.endsWith('.imported'))
        .sort(),
    ).toEqual(['history.jsonl.2.imported', 'history.jsonl.imported']);
  }),
);

test.each(SQL_IMPLEMENTATIONS)(
  'a program that still writes the journal while another imports it loses nothing: $name',
  ({ drivers }) =>
    inFolder((folder) => {
      const writer = journal(folder);
      const [first] = addAll(writer, [aRep({ number: 1 })]);
      openHistory(folder, { drivers }).close();
      const second = writer.addRep(1, aRep({ number: 2 }));
      writer.addOutcome(first!, aScore({ version: 2 }));
      expect(writer.record(first!)).toStrictEqual(RECORD);
      expect(writer.record(second)).toStrictEqual(RECORD);
      expect(numbers(writer)).toEqual([1, 2]);
      writer.close();
      const all = openHistory(folder, { drivers });
      expect([...all.reps({})].map(({ number, outcomes }) => [number, outcomes.length])).toEqual([
        [1, 2],
        [2, 1],
      ]);
      expect(all.practices()).toHaveLength(1);
      all.close();
    }),
);
