import { describe, expect, test } from 'vitest';
import { editDistance, nearest } from '../../src/profile/nearest.ts';

describe('edit distance', () => {
  // kitten/sitting is the textbook pair; the others by hand.
  test.each([
    ['kitten', 'sitting', 3],
    ['', 'abc', 3],
    ['same', 'same', 0],
    ['relaese', 'release', 1],
    ['ab', 'ba', 1],
    ['flaw', 'lawn', 2],
  ])('%s to %s', (from, to, expected) => {
    expect(editDistance(from, to)).toBe(expected);
    expect(editDistance(to, from)).toBe(expected);
  });
});

describe('the nearest candidate', () => {
  const keys = ['duration_s', 'peak_level', 'shape', 'to_level'];
  test.each([
    ['duration', 'duration_s'],
    ['durration_s', 'duration_s'],
    ['Peak-Level', 'peak_level'],
    ['pek_level', 'peak_level'],
    ['sahpe', 'shape'],
    ['colour', null],
    ['x'.repeat(10_000), null],
  ])('to %s is %s', (word, expected) => {
    expect(nearest(word, keys)).toBe(expected);
  });

  test('is none among none', () => {
    expect(nearest('a', [])).toBeNull();
  });
});
