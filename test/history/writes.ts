import fc from 'fast-check';
import { expect } from 'vitest';
import type { HistoryStore, NewRep, RepQuery } from '../../src/history/store.ts';
import { Problem } from '../../src/problem.ts';
import { aPractice, aRep, aScore, NO_REP } from './fixtures.ts';

interface RepWrite {
  readonly kind: 'rep';
  readonly outcome: 'scored' | 'no rep' | 'void';
  readonly level: number;
  readonly utcMs: number;
  readonly fields: Pick<
    NewRep,
    'targetId' | 'targetVersion' | 'corner' | 'condition' | 'phase' | 'feedback'
  >;
}
/** `place` among the reps so far. */
type LaterWrite =
  | {
      readonly kind: 'outcome';
      readonly place: number;
      readonly version: number;
      readonly level: number;
    }
  | { readonly kind: 'rating'; readonly place: number };
export type Write = RepWrite | LaterWrite | { readonly kind: 'ask' };

const field: fc.Arbitrary<string> = fc.constantFrom('a', 'b');
const level: fc.Arbitrary<number> = fc.double({ noNaN: true, noDefaultInfinity: true });
const place: fc.Arbitrary<number> = fc.nat({ max: 11 });

const rep: fc.Arbitrary<RepWrite> = fc.record({
  kind: fc.constant('rep'),
  outcome: fc.constantFrom('scored', 'no rep', 'void'),
  level,
  utcMs: fc.integer({ min: 0, max: 4 }),
  fields: fc.record({
    targetId: field,
    targetVersion: field,
    corner: fc.option(field),
    condition: fc.option(field),
    phase: fc.constantFrom('warm-up', 'block'),
    feedback: fc.constantFrom('shown', 'hidden', 'first-of-day'),
  }),
});
const outcome: fc.Arbitrary<LaterWrite> = fc.record({
  kind: fc.constant('outcome'),
  place,
  version: fc.integer({ min: 2, max: 4 }),
  level,
});
const rating: fc.Arbitrary<LaterWrite> = fc.record({ kind: fc.constant('rating'), place });
const ask: fc.Arbitrary<Write> = fc.record({ kind: fc.constant('ask') });

/** Anything that is done to a history, with questions in between. */
export const WRITES: fc.Arbitrary<Write[]> = fc.array(fc.oneof(rep, rep, outcome, rating, ask), {
  maxLength: 20,
});

export const QUERY: fc.Arbitrary<RepQuery> = fc.record(
  {
    driver: field,
    targetId: field,
    targetVersion: field,
    corner: field,
    sinceUtcMs: fc.integer({ min: 0, max: 4 }),
    practiceId: fc.integer({ min: 1, max: 3 }),
    limit: fc.integer({ min: 0, max: 4 }),
  },
  { requiredKeys: [] },
);

/** Does all of it to an empty history; `onAsk` where something is asked. */
export function doWrites(history: HistoryStore, all: readonly Write[], onAsk: () => void): void {
  const practices = ['a', 'b'].map((driver) => history.startPractice(aPractice({ driver })));
  const ids: number[] = [];
  for (const [i, write] of all.entries())
    if (write.kind === 'ask') onAsk();
    else if (write.kind === 'rep') ids.push(addRep(history, practices[i % 2]!, write));
    else writeLater(history, ids[write.place % Math.max(1, ids.length)], write);
}

function addRep(history: HistoryStore, practiceId: number, write: RepWrite): number {
  const at = { utcMs: write.utcMs, zone: 'UTC', offsetMin: 0 };
  const results = {
    scored: { outcome: aScore({ averageErrorLevel: write.level }) },
    'no rep': { outcome: NO_REP },
    void: { outcome: null, voided: 'aborted' as const },
  };
  return history.addRep(practiceId, aRep({ ...write.fields, ...results[write.outcome], at }));
}

/** A second rating or outcome of the same version is refused. */
function writeLater(history: HistoryStore, id: number | undefined, write: LaterWrite): void {
  if (id === undefined) return;
  try {
    if (write.kind === 'rating') history.addSelfRating(id, 'late heavy');
    else history.addOutcome(id, aScore({ version: write.version, averageErrorLevel: write.level }));
  } catch (error) {
    expect(error).toBeInstanceOf(Problem);
  }
}
