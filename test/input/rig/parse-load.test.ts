import { describe, expect, test } from 'vitest';
import { parseLoad, parseLoads } from '../../../src/input/rig/parse-load.ts';
import { Problem } from '../../../src/problem.ts';

describe('parseLoad', () => {
  // NIST SP 811 (2008), appendix B.8: 1 kgf = 9.806 65 N exactly, 1 lbf = 4.448 222 N to seven digits.
  test.each([
    ['100N', 100],
    ['0n', 0],
    ['20kgf', 196.133],
    [' 20 kg ', 196.133],
    ['45.5kgf', 446.202575],
  ])('%s', (text, newtons) => {
    expect(parseLoad(text)).toBeCloseTo(newtons, 9);
  });

  test.each([
    ['1lbf', 4.448222],
    ['1 lb', 4.448222],
    ['100LBF', 444.8222],
  ])('%s', (text, newtons) => {
    expect(parseLoad(text) / newtons).toBeCloseTo(1, 6);
  });

  test.each(['', '20', 'kgf', '-5N', '20 stone', '1e3N', '20kgf 30kgf'])('refuses "%s"', (text) => {
    expect(() => parseLoad(text)).toThrow(Problem);
  });

  test('lists are separated by commas', () => {
    const loads = parseLoads('0N, 10kgf,20 kgf');
    expect(loads.map(({ text }) => text)).toEqual(['0N', '10kgf', '20 kgf']);
    expect(loads[0]?.newtons).toBe(0);
    expect(loads[1]?.newtons).toBeCloseTo(98.0665, 9);
    expect(loads[2]?.newtons).toBeCloseTo(196.133, 9);
    expect(() => parseLoads('10N,,20N')).toThrow(Problem);
  });
});
