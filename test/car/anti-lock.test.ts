import { describe, expect, test } from 'vitest';
import { ANTI_LOCK_OFF, type AntiLock, antiLockAfter } from '../../src/car/anti-lock.ts';

const ANTI_LOCK: AntiLock = {
  front: { releaseAtUse: 1, reapplyAtUse: 0.9 },
  rear: { releaseAtUse: 0.95, reapplyAtUse: 0.85 },
  releasePerS: 6,
  reapplyPerS: 2,
};

/** The shares over a run of uses, 10 ms each. */
function shares(axle: 'front' | 'rear', uses: readonly number[]): number[] {
  let state = ANTI_LOCK_OFF;
  return uses.map((use) => {
    state = antiLockAfter(ANTI_LOCK, axle, state, use, 0.01);
    return Number(state.share.toFixed(9));
  });
}

describe('anti-lock', () => {
  // By hand: 6 per second is 0.06 in 10 ms, 2 per second 0.02.
  test('takes pressure away above the cap, until the use is under the re-apply value', () => {
    expect(shares('front', [0.99, 1.05, 1.02, 0.97, 0.91, 0.89])).toEqual([
      1, 0.94, 0.88, 0.82, 0.76, 0.78,
    ]);
  });

  test('gives it back between the two values once it has begun to, and takes again above the cap', () => {
    expect(shares('front', [1.1, 0.8, 0.95, 0.97, 1.01])).toEqual([0.94, 0.96, 0.98, 1, 0.94]);
  });

  test('each axle has its own cap', () => {
    expect(shares('rear', [0.97])).toEqual([0.94]);
    expect(shares('front', [0.97])).toEqual([1]);
  });

  test('never takes more than all, and none never steps in', () => {
    expect(
      shares(
        'front',
        Array.from({ length: 20 }, () => 1.3),
      ).at(-1),
    ).toBe(0);
    const taken = { share: 0.2, phase: 'releasing' } as const;
    expect(antiLockAfter(null, 'front', taken, 1.5, 0.01)).toEqual(ANTI_LOCK_OFF);
  });

  test('settles the use about the cap for a driver who holds twice the limit', () => {
    let state = ANTI_LOCK_OFF;
    let sum = 0;
    for (let i = 0; i < 4000; i++) {
      const use = 2 * state.share;
      state = antiLockAfter(ANTI_LOCK, 'front', state, use, 0.001);
      if (i >= 1000) sum += use;
    }
    // Between re-apply and cap, give or take one step.
    expect(sum / 3000).toBeGreaterThan(0.9);
    expect(sum / 3000).toBeLessThan(1);
  });
});
