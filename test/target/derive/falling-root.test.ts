import { describe, expect, test } from 'vitest';
import { fallingRoot } from '../../../src/target/derive/falling-root.ts';

/** The root, and how often the function was asked. */
function asked(
  f: (x: number) => number,
  guess: number,
): { readonly root: number; readonly times: number } {
  let times = 0;
  const counted = (x: number): number => {
    times++;
    return f(x);
  };
  return { root: fallingRoot(counted, guess, 1e-6), times };
}

describe('where a falling function comes down to 0', () => {
  test.each<[string, (x: number) => number, number]>([
    ['a line', (x) => 30 - 2 * x, 15],
    ['a slope that grows', (x) => 8 - x ** 3, 2],
    ['a slope that shrinks', (x) => 100 / (1 + x) - 10, 9],
    ['a corner', (x) => Math.min(4 - x, 10 - 3 * x), 10 / 3],
    ['a rise in front of it', (x) => (x < 1 ? 1 + x : 3 - x), 3],
  ])('%s', (_name, f, root) => {
    for (const guess of [0, 0.5, 1, root, 4 * root])
      expect(asked(f, guess).root).toBeCloseTo(root, 5);
  });

  test('a jump: just beyond it', () => {
    const { root } = asked((x) => (x < 5 ? 2 - x / 5 : 5 - x), 1);
    expect(root).toBeCloseTo(5, 5);
  });

  test('never above 0: 0', () => {
    for (const guess of [0, 1, 50]) expect(asked((x) => -1 - x, guess).root).toBe(0);
  });

  test('a guess that is right is asked for once, one that is close few times', () => {
    const f = (x: number): number => 8 - x ** 3;
    expect(asked(f, 2).times).toBe(1);
    expect(asked(f, 2.05).times).toBeLessThanOrEqual(8);
  });
});
