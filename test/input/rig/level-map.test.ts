import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { levelMap } from '../../../src/input/rig/level-map.ts';
import { Problem } from '../../../src/problem.ts';
import { calibration, WORD } from './calibration.ts';

describe('levelMap', () => {
  test('goes from rest to full in proportion', () => {
    const level = levelMap(calibration(1000, 5000), WORD);
    expect([1000, 2000, 3000, 5000].map(level)).toEqual([0, 0.25, 0.5, 1]);
  });

  test('an axis that counts down reads the same', () => {
    // An 8-bit brake that rests at 255: (255 - 100) / 255 = 60.8 %.
    const level = levelMap(calibration(255, 0), { ...WORD, bitSize: 8 });
    expect(level(255)).toBe(0);
    expect(level(100)).toBeCloseTo(0.6078431, 7);
    expect(level(0)).toBe(1);
  });

  test('counts beyond rest and full are clamped', () => {
    const level = levelMap(calibration(1000, 5000), WORD);
    expect([0, 999, 5001, 65535].map(level)).toEqual([0, 0, 1, 1]);
  });

  test('dead zones read as 0 and as 1 and the rest is stretched', () => {
    // Span 1000: the first 100 counts are 0, the last 200 are 1, 450 is half of the 700 between.
    const level = levelMap(calibration(0, 1000, { deadStart: 0.1, deadEnd: 0.2 }), WORD);
    expect(level(100)).toBeCloseTo(0, 12);
    expect(level(450)).toBeCloseTo(0.5, 12);
    expect(level(800)).toBeCloseTo(1, 12);
    expect(level(900)).toBe(1);
  });

  test('two pedals on one axis go opposite ways from the middle and never both', () => {
    const brake = levelMap(calibration(32768, 0), WORD);
    const throttle = levelMap(calibration(32768, 65535), WORD);
    expect([brake(16384), throttle(16384)]).toEqual([0.5, 0]);
    expect([brake(65535), throttle(65535)]).toEqual([0, 1]);
    expect([brake(32768), throttle(32768)]).toEqual([0, 0]);
  });

  test('a signed axis may rest at its minimum', () => {
    const level = levelMap(calibration(-32767, 32767), { ...WORD, signed: true });
    expect([-32768, -32767, 0, 32767].map(level)).toEqual([0, 0, 0.5, 1]);
  });

  test('every level lies in 0..1 and follows the pedal', () => {
    const counts = fc.integer({ min: 0, max: 65535 });
    const dead = fc.double({ min: 0, max: 0.4, noNaN: true });
    fc.assert(
      fc.property(counts, counts, dead, dead, counts, counts, (rest, full, start, end, a, b) => {
        fc.pre(Math.abs(full - rest) * (1 - start - end) >= 67);
        const level = levelMap(calibration(rest, full, { deadStart: start, deadEnd: end }), WORD);
        expect(level(a)).toBeGreaterThanOrEqual(0);
        expect(level(a)).toBeLessThanOrEqual(1);
        if ((a - b) * (full - rest) >= 0) expect(level(a)).toBeGreaterThanOrEqual(level(b));
      }),
    );
  });

  test.each([
    ['too few counts', calibration(100, 166), WORD, '66 counts, at least 67'],
    ['rest is full', calibration(100, 100), WORD, '0 counts'],
    ['dead zones eat it', calibration(0, 100, { deadEnd: 0.5 }), WORD, '50 counts'],
    ['dead zones overlap', calibration(0, 1000, { deadStart: 0.5, deadEnd: 0.5 }), WORD, 'dead'],
    ['negative dead zone', calibration(0, 1000, { deadStart: -0.1 }), WORD, 'dead zones'],
    ['not in the field', calibration(0, 256), { ...WORD, bitSize: 8 }, '256 counts do not fit'],
    ['below the field', calibration(-1, 255), WORD, '-1 counts do not fit'],
    ['not a number', calibration(Number.NaN, 255), WORD, 'NaN counts'],
  ])('refuses: %s', (_name, bad, field, words) => {
    expect(() => levelMap(bad, field)).toThrow(Problem);
    expect(() => levelMap(bad, field)).toThrow(words);
  });

  test('67 counts are enough: one count is then the corridor of 1.5 %', () => {
    expect(levelMap(calibration(100, 167), WORD)(101)).toBeCloseTo(1 / 67, 12);
  });
});
