import { describe, expect, test } from 'vitest';
import { practiceBlocks } from '../../../src/drill/plan/practice-blocks.ts';
import { readPlan } from '../../profile/read-sound.ts';

const plan = readPlan(
  [
    'name: P',
    'zones: [{ target: a }, { target: b }, { target: c }]',
    'first_of_day_reps: 5',
    'warm_up_reps: 4',
    'blocks:',
    '  - { reps: 6 }',
    '  - { reps: 9, order: shuffled, vary: { level_factor: [0.8, 0.9] } }',
    'carry_over: { reps: 3, zones: [{ target: d }] }',
  ].join('\n'),
  'p.yaml',
);
const start = {
  first: 'a',
  zones: ['a', 'b', 'c'],
  newDay: true,
  carryOver: 'd' as string | null,
  seed: 1,
};
const blocks = (change: Partial<typeof start> = {}) =>
  practiceBlocks(plan, { ...start, ...change }, (zone) => zone !== 'c');
const outline = (change: Partial<typeof start> = {}) =>
  blocks(change).map(({ phase, order, reps }) => `${phase} ${order} ${reps.length}`);

describe('the blocks of a practice', () => {
  test('cold reps first, then the warm-up, the blocks, and the carry-over check last', () => {
    expect(outline()).toEqual([
      'first-of-day blocked 5',
      'warm-up blocked 4',
      'block blocked 6',
      'block shuffled 9',
      'carry-over blocked 3',
    ]);
  });

  test('no first-of-day reps on the same day, no check where none is due', () => {
    expect(outline({ newDay: false, carryOver: null })).toEqual([
      'warm-up blocked 4',
      'block blocked 6',
      'block shuffled 9',
    ]);
  });

  test('cold reps and warm-up are driven on the first zone, the check on its own', () => {
    const zonesOf = (block: number) => new Set(blocks()[block]?.reps.map(({ zone }) => zone));
    expect(zonesOf(0)).toEqual(new Set(['a']));
    expect(zonesOf(1)).toEqual(new Set(['a']));
    expect(zonesOf(4)).toEqual(new Set(['d']));
  });

  test('a shuffled block does not go on with the zone before it', () => {
    for (let seed = 0; seed < 50; seed++) expect(blocks({ seed })[3]?.reps[0]?.zone).not.toBe('c');
  });

  test('reps are varied where the block says so and the zone can be', () => {
    const varied = blocks().flatMap(({ reps }) =>
      reps.filter(({ variation }) => variation !== null),
    );
    expect(varied).toHaveLength(6);
    for (const { zone, variation } of varied) {
      expect(zone).not.toBe('c');
      expect(variation?.releaseFactor).toBe(1);
      expect(variation?.levelFactor).toBeGreaterThanOrEqual(0.8);
      expect(variation?.levelFactor).toBeLessThanOrEqual(0.9);
    }
  });

  test('the seed decides everything', () => {
    expect(blocks({ seed: 5 })).toEqual(blocks({ seed: 5 }));
    expect(blocks({ seed: 5 })).not.toEqual(blocks({ seed: 6 }));
  });
});
