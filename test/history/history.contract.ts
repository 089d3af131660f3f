import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openHistory } from '../../src/history/open-history.ts';
import type { HistoryStore, NewRep, RepQuery } from '../../src/history/store.ts';
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

    test('keeps the samples as they were scored', () =>
      withHistory((history) => {
        const record = quantiseRecord(fiveSecondRep(11, { bits: 16, counts: 3 }));
        const [id] = addAll(history, [aRep({ record })]);
        expect(history.record(id!)).toStrictEqual(record);
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
