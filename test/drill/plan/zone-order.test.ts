import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { ORDERS } from '../../../src/drill/plan/practice-plan.ts';
import { zoneOrder } from '../../../src/drill/plan/zone-order.ts';
import { seededRandom } from '../../../src/drill/seeded-random.ts';

const shuffled = (zones: number, reps: number, seed: number, before: number | null = null) =>
  zoneOrder('shuffled', zones, reps, seededRandom(seed), before);

test('blocked: all of one, then all of the next', () => {
  expect(zoneOrder('blocked', 3, 7, seededRandom(1))).toEqual([0, 0, 0, 1, 1, 2, 2]);
});

test('serial: in turn', () => {
  expect(zoneOrder('serial', 3, 7, seededRandom(1))).toEqual([0, 1, 2, 0, 1, 2, 0]);
});

describe('shuffled', () => {
  test('two zones come in turn, because none comes twice in a row', () => {
    const both = new Set(Array.from({ length: 50 }, (_, seed) => shuffled(2, 4, seed).join('')));
    expect([...both].toSorted()).toEqual(['0101', '1010']);
  });

  // Arrangements of aabbcc without equal neighbours: 90 - 3 * 30 + 3 * 12 - 6 = 30 (inclusion and exclusion).
  test('every order without repeats is met', () => {
    const seen = new Set(Array.from({ length: 1000 }, (_, seed) => shuffled(3, 6, seed).join('')));
    expect(seen.size).toBe(30);
  });

  test('with one rep each all six orders are as likely', () => {
    const counts = new Map<string, number>();
    for (let seed = 0; seed < 6000; seed++) {
      const order = shuffled(3, 3, seed).join('');
      counts.set(order, (counts.get(order) ?? 0) + 1);
    }
    expect(counts.size).toBe(6);
    // four standard errors of 6000 draws with chance 1/6
    for (const count of counts.values()) expect(Math.abs(count - 1000)).toBeLessThan(4 * 29);
  });

  test('each zone is as likely to come first', () => {
    const firsts = Array.from({ length: 3000 }, (_, seed) => shuffled(3, 6, seed)[0]);
    // four standard errors of 3000 draws with chance 1/3
    for (const zone of [0, 1, 2])
      expect(Math.abs(firsts.filter((first) => first === zone).length - 1000)).toBeLessThan(4 * 26);
  });

  test('does not begin with the zone before it where it can help it', () => {
    for (let seed = 0; seed < 100; seed++) expect(shuffled(3, 6, seed, 1)[0]).not.toBe(1);
    // three of the first and two of the second can only stand as 01010
    expect(shuffled(2, 5, 1, 0)).toEqual([0, 1, 0, 1, 0]);
  });
});

test('every zone as often as every other, none twice in a row, the same for the same seed', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 8 }),
      fc.integer({ min: 1, max: 60 }),
      fc.integer({ min: 0, max: 1e6 }),
      fc.option(fc.nat({ max: 7 })),
      (zones, reps, seed, before) => {
        const last = before === null || before >= zones ? null : before;
        for (const order of ORDERS) {
          const places = zoneOrder(order, zones, reps, seededRandom(seed), last);
          expect(places).toHaveLength(reps);
          const counts = Array.from(
            { length: zones },
            (_, z) => places.filter((p) => p === z).length,
          );
          expect(Math.max(...counts) - Math.min(...counts)).toBeLessThanOrEqual(1);
          expect(zoneOrder(order, zones, reps, seededRandom(seed), last)).toEqual(places);
        }
        const mixed = shuffled(zones, reps, seed, last);
        mixed.forEach((zone, i) => {
          if (i > 0) expect(zone).not.toBe(mixed[i - 1]);
        });
      },
    ),
  );
});
