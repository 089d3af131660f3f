import { mkdirSync, readdirSync, readFileSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { encodeRecord } from '../../src/history/codec/encode-record.ts';
import type { JournalEntry } from '../../src/history/journal/journal-line.ts';
import { Staging } from '../../src/history/journal/staging.ts';
import { openHistory } from '../../src/history/open-history.ts';
import type { HistoryStore, NewNote, NewRep, RepQuery } from '../../src/history/store.ts';
import { Problem } from '../../src/problem.ts';
import { quantiseRecord } from '../../src/trace/quantise-record.ts';
import {
  addAll,
  aNote,
  aPractice,
  aRep,
  aScore,
  EVENING_MS,
  LIVE_START,
  NO_REP,
  RECORD,
} from './fixtures.ts';
import { type Implementation, inFolder } from './implementations.ts';
import { fiveSecondRep } from './rep-signals.ts';

const LATER = { utcMs: EVENING_MS + 86_400_000, zone: 'Europe/Berlin', offsetMin: 60 };

function staged(origin: string, practice: string, { record, ...rep }: NewRep): JournalEntry {
  const samples = Buffer.from(encodeRecord(record)).toString('base64');
  return { kind: 'rep', origin, practice, rep, samples };
}

function withoutRep({ repId: _, ...note }: NewNote): Omit<NewNote, 'repId'> {
  return note;
}

function takeIn(history: HistoryStore, path: string, entries: readonly JournalEntry[]): void {
  const staging = new Staging(path);
  for (const entry of entries) staging.add(entry);
  staging.finish();
  history.takeIn(path, staging.entries);
  staging.remove();
}

/** What every implementation of the history has to do. */
export function historyContract({ name, drivers }: Implementation): void {
  const open = (folder: string): HistoryStore => openHistory(folder, { drivers });
  const withHistory = (work: (history: HistoryStore, folder: string) => void): void =>
    inFolder((folder) => {
      const history = open(folder);
      try {
        work(history, folder);
      } finally {
        history.close();
      }
    });

  describe(`the history in ${name}`, () => {
    test('is empty at first', () =>
      withHistory((history) => {
        expect(history.practices()).toEqual([]);
        expect([...history.reps({})]).toEqual([]);
        expect(history.measures({})).toEqual([]);
        expect(history.lastRepUtcMs('Kim')).toBeNull();
        expect(history.drivenSums('Kim')).toEqual([]);
      }));

    test('says what it is and where', () =>
      withHistory((history, folder) => {
        expect(history.label).toContain(name);
        expect(history.label).toContain(folder);
      }));

    test('gives practices back, oldest first, by driver', () =>
      withHistory((history) => {
        const at = { utcMs: EVENING_MS - 1, zone: 'Asia/Kathmandu', offsetMin: 345 };
        const later = history.startPractice(aPractice());
        const earlier = history.startPractice(
          aPractice({ driver: 'Åsa "A"', startedAt: at, seed: null, source: 'virtual' }),
        );
        expect(earlier).not.toBe(later);
        expect(history.practices()).toEqual([
          {
            ...aPractice({ driver: 'Åsa "A"', startedAt: at, seed: null, source: 'virtual' }),
            id: earlier,
          },
          { ...aPractice(), id: later },
        ]);
        expect(history.practices('Kim').map(({ id }) => id)).toEqual([later]);
        expect(history.practices('kim')).toEqual([]);
      }));

    test('gives a rep back with all its fields, and after opening again', () =>
      inFolder((folder) => {
        const rep = aRep({ condition: "wet; 5°C 'cold'\n\u2028🏁", selfRating: 'late' });
        const first = open(folder);
        const [id] = addAll(first, [rep]);
        first.close();
        const again = open(folder);
        const { record, outcome, ...fields } = rep;
        const [practice] = again.practices();
        expect([...again.reps({})]).toEqual([{ ...fields, id, practice, outcomes: [outcome] }]);
        expect(again.record(id!)).toStrictEqual(record);
        again.close();
      }));

    test('gives notes back oldest first, by driver, corner and rep, and after opening again', () =>
      inFolder((folder) => {
        const first = open(folder);
        const [repId] = addAll(first, [aRep()]);
        const at = { utcMs: EVENING_MS - 5, zone: 'Asia/Kathmandu', offsetMin: 345 };
        const text = "late; \u001b[31m'x'\n\u2028🏁";
        const absent = { car: null, corner: null, variant: null, gear: null };
        const later = first.addNote(aNote({ text, repId: repId! }));
        const earlier = first.addNote(aNote({ at, driver: 'Bo', text: '', ...absent }));
        first.close();
        const again = open(folder);
        const bo = { ...aNote({ at, driver: 'Bo', text: '', ...absent }), id: earlier };
        const kim = { ...aNote({ text, repId: repId! }), id: later };
        expect(again.notes({})).toEqual([bo, kim]);
        expect(again.notes({ driver: 'Bo' })).toEqual([bo]);
        expect(again.notes({ corner: 'kiln-hairpin' })).toEqual([kim]);
        expect(again.notes({ repId: repId! })).toEqual([kim]);
        expect(again.notes({ driver: 'Bo', repId: repId! })).toEqual([]);
        again.close();
      }));

    test('copies itself whole to a new file, which is a history again, and never over one', () =>
      inFolder((folder) => {
        const history = open(folder);
        const [repId] = addAll(history, [aRep({ condition: 'wet' }), aRep({ number: 2 })]);
        history.addNote(aNote({ repId: repId! }));
        const copies = join(folder, "a 'copy'");
        mkdirSync(copies);
        const copy = join(copies, drivers.length > 0 ? 'history.sqlite' : 'history.jsonl');
        history.backup(copy);
        history.addNote(aNote({ text: 'later' }));
        const restored = open(copies);
        const [, later] = history.notes({});
        expect(later?.text).toBe('later');
        expect([...restored.reps({})]).toEqual([...history.reps({})]);
        expect(restored.notes({})).toEqual(history.notes({}).slice(0, 1));
        expect(restored.record(repId!)).toStrictEqual(RECORD);
        restored.close();
        expect(() => history.backup(copy)).toThrow(/there already/);
        expect(() => history.backup(join(folder, 'none', 'file'))).toThrow(Problem);
        expect(open(copies).notes({})).toHaveLength(1);
        history.close();
      }));

    test('refuses a note on a rep that is not there', () =>
      withHistory((history) => {
        expect(() => history.addNote(aNote({ repId: 7 }))).toThrow(Problem);
        expect(history.notes({})).toEqual([]);
      }));

    test('keeps to the bit what a zone of the live car began with', () =>
      withHistory((history) => {
        addAll(history, [aRep({ live: LIVE_START }), aRep()]);
        expect([...history.reps({})].map(({ live }) => live)).toStrictEqual([LIVE_START, null]);
      }));

    test('keeps to the bit how a target was varied', () =>
      withHistory((history) => {
        const varied = { kind: 'varied', levelFactor: 0.1 + 0.2, releaseFactor: 1.15 } as const;
        addAll(history, [aRep({ targetChange: varied }), aRep()]);
        const kept = [...history.reps({})].map(({ targetChange }) => targetChange);
        expect(kept).toStrictEqual([varied, null]);
      }));

    test('keeps what is absent absent', () =>
      withHistory((history) => {
        const absent = { car: null, corner: null, variant: null, condition: null };
        addAll(history, [aRep({ ...absent, selfRating: null })]);
        const [rep] = history.reps({});
        expect(rep).toMatchObject({ ...absent, selfRating: null, voided: null });
      }));

    test('shows itself as it is at one moment, with identities, by driver and day', () =>
      withHistory((history) => {
        const [kim, late] = addAll(history, [aRep(), aRep({ number: 2, at: LATER })]);
        const bo = history.startPractice(aPractice({ driver: 'Bo' }));
        history.addRep(bo, aRep({ record: RECORD, outcome: NO_REP }));
        history.addNote(aNote({ repId: kim! }));
        history.addNote(aNote({ at: LATER, driver: 'Bo', text: 'of no rep' }));
        const snapshot = history.snapshot();
        const all = [...snapshot.reps({})];
        expect(all).toHaveLength(3);
        expect(new Set(all.map(({ origin }) => origin)).size).toBe(3);
        const [second] = snapshot.reps({ driver: 'Kim', sinceUtcMs: LATER.utcMs });
        expect(second?.fields.number).toBe(2);
        expect(snapshot.practice(second!.practice)?.start).toEqual(aPractice());
        expect(snapshot.rep(second!.origin)?.record()).toStrictEqual(RECORD);
        expect(snapshot.counts({})).toEqual({ practices: 2, reps: 3, notes: 2 });
        expect(snapshot.counts({ driver: 'Kim' })).toEqual({ practices: 1, reps: 2, notes: 1 });
        // a note follows its rep, however late it was written
        const since = { sinceUtcMs: LATER.utcMs };
        expect(snapshot.counts(since)).toEqual({ practices: 1, reps: 1, notes: 1 });
        const [about] = snapshot.notes({ driver: 'Kim' });
        expect(snapshot.rep(about!.rep!)?.fields.number).toBe(1);
        expect(snapshot.note(about!.origin)).toEqual(about);
        expect([snapshot.practice('x'), snapshot.rep('x'), snapshot.note('x')]).toEqual([
          null,
          null,
          null,
        ]);
        snapshot.close();
        snapshot.close();
        history.addNote(aNote({ repId: late! }));
      }));

    test('gives more than a page of equal instants in one order, each once', () =>
      withHistory((history) => {
        addAll(
          history,
          Array.from({ length: 450 }, (_, i) => aRep({ number: i + 1 })),
        );
        const snapshot = history.snapshot();
        const origins = [...snapshot.reps({})].map(({ origin }) => origin);
        snapshot.close();
        expect(new Set(origins).size).toBe(450);
        expect(origins).toEqual(origins.toSorted());
      }));

    test('takes in what is staged once, as a whole, and keeps what it has', () =>
      withHistory((history, folder) => {
        const [known] = addAll(history, [aRep()]);
        const snapshot = history.snapshot();
        const [own] = [...snapshot.reps({})];
        snapshot.close();
        const entries: JournalEntry[] = [
          { kind: 'practice', origin: 'p', start: aPractice({ driver: 'Bo' }) },
          staged('r', 'p', aRep({ number: 7 })),
          staged(own!.origin, own!.practice, aRep({ number: 99 })),
          { kind: 'outcome', rep: 'r', outcome: aScore({ version: 2 }) },
          { kind: 'rating', rep: own!.origin, selfRating: 'timing: late' },
          { kind: 'note', origin: 'n', rep: 'r', note: withoutRep(aNote({ driver: 'Bo' })) },
        ];
        for (let time = 1; time <= 2; time++) {
          takeIn(history, join(folder, `staged-${time}`), entries);
          const reps = [...history.reps({})];
          expect(reps.map(({ number }) => number).toSorted()).toEqual([1, 7]);
          const [bo] = history.reps({ driver: 'Bo' });
          expect(bo?.outcomes.map(({ version }) => version)).toEqual([1, 2]);
          expect(history.record(bo!.id)).toStrictEqual(RECORD);
          expect(reps.find(({ id }) => id === known)?.selfRating).toBe('timing: late');
          expect(history.notes({}).map(({ repId }) => repId)).toEqual([bo!.id]);
        }
        const again = open(folder);
        expect([...again.reps({})]).toHaveLength(2);
        again.close();
      }));

    test('a staged file that cannot be read back whole leaves everything as it was', () =>
      withHistory((history, folder) => {
        addAll(history, [aRep()]);
        const path = join(folder, 'cut');
        const staging = new Staging(path);
        staging.add({ kind: 'practice', origin: 'p', start: aPractice({ driver: 'Bo' }) });
        staging.add(staged('r', 'p', aRep()));
        staging.finish();
        truncateSync(path, readFileSync(path).length - 40);
        expect(() => history.takeIn(path, staging.entries)).toThrow(/1 of 2 entries/);
        staging.remove();
        expect(history.practices()).toHaveLength(1);
        expect(readdirSync(folder).filter((name) => name.includes('part'))).toEqual([]);
        addAll(history, [aRep({ number: 2 })]);
        expect([...history.reps({})]).toHaveLength(2);
      }));

    test('takes in while another program writes, and loses nothing of it', () =>
      withHistory((history, folder) => {
        const other = open(folder);
        const [first] = addAll(other, [aRep()]);
        takeIn(history, join(folder, 'staged'), [
          { kind: 'practice', origin: 'p', start: aPractice({ driver: 'Bo' }) },
          staged('r', 'p', aRep()),
        ]);
        addAll(other, [aRep({ number: 2 })]);
        other.addSelfRating(first!, 'timing: late');
        expect([...other.reps({})]).toHaveLength(3);
        expect([...history.reps({})]).toHaveLength(3);
        expect([...history.reps({ driver: 'Kim' })][0]?.selfRating).toBe('timing: late');
        other.close();
      }));

    test('keeps the samples as they were scored', () =>
      withHistory((history) => {
        const record = quantiseRecord(fiveSecondRep(11, { bits: 16, counts: 3 }));
        const [id] = addAll(history, [aRep({ record })]);
        expect(history.record(id!)).toStrictEqual(record);
        expect(history.brake(id!)).toStrictEqual(record.brake);
      }));

    test('keeps void reps with their reason and their samples', () =>
      withHistory((history) => {
        const [id] = addAll(history, [aRep({ voided: 'device lost', outcome: null })]);
        expect([...history.reps({})]).toMatchObject([{ voided: 'device lost', outcomes: [] }]);
        expect(history.record(id!)).toStrictEqual(RECORD);
        expect(history.measures({})).toMatchObject([
          { voided: 'device lost', numbers: null, conditions: { scoreVersion: null } },
        ]);
      }));

    test('adds outcomes beside the stored ones, oldest version first', () =>
      withHistory((history) => {
        const [id] = addAll(history, [aRep()]);
        history.addOutcome(id!, aScore({ version: 3, score: 3 }));
        history.addOutcome(id!, aScore({ version: 2, score: 2 }));
        const [rep] = history.reps({});
        expect(rep?.outcomes.map(({ version, score }) => [version, score])).toEqual([
          [1, 71.25],
          [2, 2],
          [3, 3],
        ]);
      }));

    test('never rewrites an outcome', () =>
      withHistory((history) => {
        const [id] = addAll(history, [aRep()]);
        expect(() => history.addOutcome(id!, aScore({ score: 99 }))).toThrow(Problem);
        expect([...history.reps({})][0]?.outcomes).toEqual([aScore()]);
      }));

    test('adds the driver’s own rating once, and keeps it', () =>
      inFolder((folder) => {
        const first = open(folder);
        const [id, other] = addAll(first, [aRep(), aRep({ selfRating: 'right right', number: 2 })]);
        first.addSelfRating(id!, 'late heavy');
        expect(() => first.addSelfRating(id!, 'early light')).toThrow(Problem);
        expect(() => first.addSelfRating(other!, 'early light')).toThrow(Problem);
        expect(() => first.addSelfRating(99, 'early light')).toThrow(Problem);
        first.close();
        const again = open(folder);
        const kept = [...again.reps({})];
        expect(kept.map(({ selfRating }) => selfRating)).toEqual(['late heavy', 'right right']);
        expect(kept[0]?.outcomes).toEqual([aScore()]);
        again.close();
      }));

    test('refuses practices and reps that are not there', () =>
      withHistory((history) => {
        addAll(history, [aRep()]);
        expect(() => history.addRep(99, aRep())).toThrow(Problem);
        expect(() => history.addOutcome(99, aScore())).toThrow(Problem);
        expect(() => history.record(99)).toThrow(Problem);
        expect(() => history.record(0)).toThrow(Problem);
        expect(() => history.brake(99)).toThrow(Problem);
        expect([...history.reps({})]).toHaveLength(1);
      }));

    test('gives reps by time, not in the order of writing; equal times in that of writing', () =>
      withHistory((history) => {
        const at = (utcMs: number, number: number): NewRep =>
          aRep({ at: { utcMs, zone: 'Europe/Berlin', offsetMin: 60 }, number });
        addAll(history, [at(30, 1), at(10, 2), at(20, 3), at(10, 4)]);
        expect([...history.reps({})].map(({ number }) => number)).toEqual([2, 4, 3, 1]);
        expect(history.measures({}).map(({ repId }) => repId)).toEqual(
          [...history.reps({})].map(({ id }) => id),
        );
      }));

    test('the bounds of a query: since includes its instant, limit is the newest', () =>
      withHistory((history) => {
        const at = (utcMs: number): NewRep =>
          aRep({ at: { utcMs, zone: 'UTC', offsetMin: 0 }, number: utcMs });
        addAll(history, [at(10), at(20), at(30)]);
        const numbers = (query: RepQuery): number[] =>
          [...history.reps(query)].map(({ number }) => number);
        expect(numbers({ sinceUtcMs: 20 })).toEqual([20, 30]);
        expect(numbers({ sinceUtcMs: 21 })).toEqual([30]);
        expect(numbers({ limit: 2 })).toEqual([20, 30]);
        expect(numbers({ limit: 0 })).toEqual([]);
        expect(numbers({ limit: 9, sinceUtcMs: 15 })).toEqual([20, 30]);
      }));

    test('any query gives what filtering all reps by hand gives', () => {
      const field = fc.constantFrom('a', 'b');
      const rep = fc.record({ targetId: field, targetVersion: field, corner: fc.option(field) });
      const query = fc.record(
        {
          driver: field,
          targetId: field,
          targetVersion: field,
          corner: field,
          practiceId: fc.integer({ min: 1, max: 3 }),
        },
        { requiredKeys: [] },
      );
      fc.assert(
        fc.property(fc.array(rep, { maxLength: 12 }), query, (reps, asked) =>
          withHistory((history) => {
            const ids = ['a', 'b'].map((driver) => history.startPractice(aPractice({ driver })));
            for (const [i, fields] of reps.entries())
              history.addRep(ids[i % 2]!, aRep({ ...fields, number: i }));
            const all = [...history.reps({})];
            expect(all).toHaveLength(reps.length);
            const expected = all.filter(
              (one) =>
                (asked.driver ?? one.practice.driver) === one.practice.driver &&
                (asked.targetId ?? one.targetId) === one.targetId &&
                (asked.targetVersion ?? one.targetVersion) === one.targetVersion &&
                (asked.corner ?? one.corner) === one.corner &&
                (asked.practiceId ?? one.practice.id) === one.practice.id,
            );
            expect([...history.reps(asked)]).toEqual(expected);
          }),
        ),
        { numRuns: 15 },
      );
    });

    test('measures carry the newest score version and the conditions', () =>
      withHistory((history) => {
        const [id] = addAll(history, [
          aRep({ phase: 'warm-up', feedback: 'hidden' }),
          aRep({ outcome: NO_REP }),
        ]);
        history.addOutcome(id!, aScore({ version: 2, score: 64.5 }));
        expect(history.measures({})).toEqual([
          {
            repId: id,
            driver: 'Kim',
            targetId: 'hairpin',
            practiceId: history.practices()[0]?.id,
            day: '2026-11-25',
            zone: 'Europe/Berlin',
            conditions: {
              targetVersion: 'v-one',
              scoreVersion: 2,
              source: 'hid',
              sensor: 'force',
              calibrationId: 'c0ffee',
              foot: 'left',
              footwear: 'race boots',
              condition: 'dry',
            },
            feedback: 'hidden',
            warmUp: true,
            selfRating: null,
            voided: null,
            numbers: {
              score: 64.5,
              releaseErrorLevel: 0.041,
              averageErrorLevel: -0.012,
              startOfReleaseErrorS: 0.031,
              peakError: 0.02,
              reapplications: 2,
            },
          },
          expect.objectContaining({
            numbers: {
              score: 0,
              releaseErrorLevel: null,
              averageErrorLevel: null,
              startOfReleaseErrorS: null,
              peakError: null,
              reapplications: null,
            },
          }),
        ]);
      }));

    test('a rep after midnight stays on the day its practice began, in the zone of the recording', () =>
      withHistory((history) => {
        const startedAt = {
          utcMs: Date.UTC(2026, 11, 31, 10, 59),
          zone: 'Pacific/Kiritimati',
          offsetMin: 840,
        };
        const practice = history.startPractice(aPractice({ startedAt }));
        const at = { ...startedAt, utcMs: startedAt.utcMs + 14 * 3_600_000 };
        history.addRep(practice, aRep({ at }));
        expect(history.measures({})[0]?.day).toBe('2027-01-01');
      }));

    test('knows the last rep of a driver', () =>
      withHistory((history) => {
        const kim = history.startPractice(aPractice());
        const other = history.startPractice(aPractice({ driver: 'Lou' }));
        const at = (utcMs: number): Partial<NewRep> => ({
          at: { utcMs, zone: 'UTC', offsetMin: 0 },
        });
        history.addRep(kim, aRep(at(3000)));
        history.addRep(kim, aRep({ ...at(1000), voided: 'aborted', outcome: null }));
        history.addRep(other, aRep(at(9000)));
        expect(history.lastRepUtcMs('Kim')).toBe(3000);
        expect(history.lastRepUtcMs('Lou')).toBe(9000);
        expect(history.lastRepUtcMs('nobody')).toBeNull();
      }));

    test('sums up what a driver drove, by target and corner', () =>
      withHistory((history) => {
        const kim = history.startPractice(aPractice());
        const again = history.startPractice(aPractice());
        const other = history.startPractice(aPractice({ driver: 'Lou' }));
        const at = (utcMs: number, targetId: string, corner: string | null): NewRep =>
          aRep({ at: { utcMs, zone: 'UTC', offsetMin: 0 }, targetId, corner });
        history.addRep(kim, at(3000, 'hairpin', null));
        history.addRep(kim, at(1000, 'hairpin', null));
        history.addRep(again, { ...at(5000, 'hairpin', null), voided: 'aborted', outcome: null });
        history.addRep(kim, at(2000, 'hairpin', 'kiln'));
        history.addRep(kim, { ...at(4000, 'sweeper', 'kiln'), voided: 'aborted', outcome: null });
        history.addRep(other, at(9000, 'hairpin', null));
        const sums = history.drivenSums('Kim').map((sum) => ({ ...sum }));
        sums.sort((a, b) => a.lastUtcMs - b.lastUtcMs);
        expect(sums).toEqual([
          { targetId: 'hairpin', corner: 'kiln', reps: 1, lastUtcMs: 2000 },
          { targetId: 'sweeper', corner: 'kiln', reps: 0, lastUtcMs: 4000 },
          { targetId: 'hairpin', corner: null, reps: 2, lastUtcMs: 5000 },
        ]);
        expect(history.drivenSums('nobody')).toEqual([]);
      }));

    test('can be written while its reps are walked through', () =>
      withHistory((history) => {
        addAll(history, [aRep(), aRep({ number: 2 })]);
        for (const { id } of history.reps({})) history.addOutcome(id, aScore({ version: 2 }));
        expect([...history.reps({})].map(({ outcomes }) => outcomes.length)).toEqual([2, 2]);
      }));

    test('two openings see what the other one writes', () =>
      withHistory((history, folder) => {
        const other = open(folder);
        const practice = history.startPractice(aPractice());
        const [first, second] = [history.addRep(practice, aRep()), other.addRep(practice, aRep())];
        expect([...history.reps({})].map(({ id }) => id)).toEqual([first, second]);
        expect([...other.reps({})]).toEqual([...history.reps({})]);
        expect(history.record(second!)).toStrictEqual(RECORD);
        other.close();
      }));

    test('makes the folders it needs and closes twice', () =>
      inFolder((folder) => {
        const history = open(`${folder}/a/b`);
        history.close();
        history.close();
      }));
  });
}
