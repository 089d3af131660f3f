import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { openHistory } from '../../../src/history/open-history.ts';
import type { HistoryStore, NewRep } from '../../../src/history/store.ts';
import { scoreRep } from '../../../src/score/score-rep.ts';
import { readTarget } from '../../../src/target/read-target.ts';
import { quantiseRecord } from '../../../src/trace/quantise-record.ts';
import { aNote, aPractice, aRep, aScore, LIVE_START, NO_REP, RECORD } from '../fixtures.ts';
import { type Implementation, inFolder, JOURNAL, SQL_IMPLEMENTATIONS } from '../implementations.ts';
import { fiveSecondRep } from '../rep-signals.ts';
import { EXPORTED_MS, entriesOf, exported, imported, manifestOf } from './archives.ts';

const ALL: readonly Implementation[] = [...SQL_IMPLEMENTATIONS, JOURNAL];

const text: fc.Arbitrary<string> = fc
  .string({ unit: 'grapheme', maxLength: 12 })
  .filter((one) => !one.includes('\0'));
const name: fc.Arbitrary<string | null> = fc.option(text);

const rep: fc.Arbitrary<NewRep> = fc
  .record({
    utcMs: fc.integer({ min: -2_000_000_000_000, max: 4_000_000_000_000 }),
    car: name,
    corner: name,
    variant: name,
    condition: name,
    targetId: text,
    targetVersion: text,
    selfRating: name,
    number: fc.integer({ min: 1, max: 4 }),
    feedback: fc.constantFrom('shown', 'hidden', 'first-of-day'),
    phase: fc.constantFrom('first-of-day', 'warm-up', 'block', 'carry-over'),
    live: fc.constantFrom(null, LIVE_START),
    targetChange: fc.constantFrom(
      null,
      { kind: 'varied' as const, levelFactor: 1 / 3, releaseFactor: 1.1 },
      { kind: 'paced by the steering' as const },
    ),
    score: fc.double({ noNaN: true, noDefaultInfinity: true }).map((one) => one + 0),
    voided: fc.constantFrom(null, 'aborted', 'device lost'),
    isScored: fc.boolean(),
    record: fc.constantFrom(RECORD, quantiseRecord(fiveSecondRep(3, { bits: 12, counts: 2 }))),
  })
  .map(({ utcMs, score, voided, isScored, ...fields }) =>
    aRep({
      ...fields,
      at: { utcMs, zone: 'Asia/Kathmandu', offsetMin: 345 },
      voided,
      outcome: voided !== null ? null : isScored ? aScore({ score }) : NO_REP,
    }),
  );

const history: fc.Arbitrary<readonly { driver: string; reps: readonly NewRep[] }[]> = fc.array(
  fc.record({ driver: text, reps: fc.array(rep, { minLength: 1, maxLength: 4 }) }),
  { minLength: 1, maxLength: 3 },
);

function write(
  store: HistoryStore,
  practices: readonly { driver: string; reps: readonly NewRep[] }[],
): void {
  for (const { driver, reps } of practices) {
    const practice = store.startPractice(
      aPractice({ driver, startedAt: reps[0]!.at, seed: reps.length > 2 ? null : 2 ** 31 }),
    );
    const ids = reps.map((one) => store.addRep(practice, one));
    store.addNote(aNote({ driver, text: '=1+1\r\n\u001b[31m', repId: ids[0]! }));
    if (reps[0]!.voided === null) store.addOutcome(ids[0]!, aScore({ version: 7 }));
  }
  store.addNote(aNote({ driver: practices[0]!.driver, text: '', gear: null }));
}

describe.each(
  ALL.flatMap((from) => ALL.map((to) => ({ from, to, names: `${from.name} to ${to.name}` }))),
)('the way of $names', ({ from, to }) => {
  test(
    'gives back all that was there; the second export differs by its date alone, the second import changes nothing',
    () =>
      fc.assert(
        fc.asyncProperty(history, (practices) =>
          inFolder(async (folder) => {
            const [source, goal] = [join(folder, 'a'), join(folder, 'b')];
            const [first, second] = [join(folder, '1.zip'), join(folder, '2.zip')];
            const store = openHistory(source, { drivers: from.drivers });
            write(store, practices);
            await exported(store, first);
            const { counts, conflicts } = await imported(first, goal, to);
            expect(conflicts).toEqual([]);
            expect(counts.rep.added).toBe(practices.flatMap(({ reps }) => reps).length);
            const copy = openHistory(goal, { drivers: to.drivers });
            await exported(copy, second, { exportedAtUtcMs: EXPORTED_MS + 5_000 });
            const [one, other] = [await entriesOf(first), await entriesOf(second)];
            expect({ ...manifestOf(other), exportedAt: '' }).toEqual({
              ...manifestOf(one),
              exportedAt: '',
            });
            one.delete('manifest.json');
            other.delete('manifest.json');
            expect([...other.keys()]).toEqual([...one.keys()]);
            for (const [entry, bytes] of one)
              expect(other.get(entry)!.equals(bytes), entry).toBe(true);
            const seen = (all: HistoryStore): object[] =>
              [...all.reps({})].map(({ id, practice: { id: _, ...practice }, ...fields }) => ({
                ...fields,
                practice,
                record: all.record(id),
              }));
            expect(seen(copy)).toHaveLength(seen(store).length);
            expect(seen(copy)).toEqual(expect.arrayContaining(seen(store)));
            store.close();
            copy.close();
            const again = (await imported(first, goal, to)).counts;
            expect([
              again.practice.added,
              again.rep.added,
              again.rep.extended,
              again.note.added,
            ]).toEqual([0, 0, 0, 0]);
            expect(again.rep.known).toBe(counts.rep.added);
          }),
        ),
        { numRuns: 5 },
      ),
    60_000,
  );
});

const TARGET = `name: Round trip
corner_type: hairpin
domain: time
rise: { duration_s: 0.2 }
peak_level: 0.8
hold_s: 0.3
release: { duration_s: 1.5, shape: linear }
`;

test('imported samples score to the bit as the recorded ones did', () =>
  inFolder(async (folder) => {
    const target = readTarget(TARGET, 'round-trip.yaml');
    const records = [1, 2, 3].map((seed) =>
      quantiseRecord(fiveSecondRep(seed, { bits: 16, counts: 3 })),
    );
    const store = openHistory(join(folder, 'a'));
    const practice = store.startPractice(aPractice());
    for (const record of records)
      store.addRep(practice, aRep({ record, outcome: scoreRep(record, target) }));
    await exported(store, join(folder, 'x.zip'));
    store.close();
    await imported(join(folder, 'x.zip'), join(folder, 'b'), JOURNAL);
    const copy = openHistory(join(folder, 'b'), { drivers: [] });
    for (const { id, outcomes } of copy.reps({})) {
      const outcome = scoreRep(copy.record(id), target);
      expect(outcome.kind).toBe('scored');
      expect(outcome).toEqual(outcomes[0]);
    }
    copy.close();
  }));
