import type { Subscription } from 'rxjs';
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { evenTicks } from '../../src/input/even-ticks.ts';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** When ticks came, in milliseconds since the call; `work` is what each has to do. */
function ticks(periodMs: number, work: (tick: number) => void = () => {}) {
  const startMs = performance.now();
  const atMs: number[] = [];
  const listening: Subscription = evenTicks(periodMs).subscribe(() => {
    atMs.push(performance.now() - startMs);
    work(atMs.length);
  });
  return { atMs, listening };
}

test('sixty a second are sixty a second, each within a millisecond before its time', () => {
  const { atMs } = ticks(1000 / 60);
  vi.advanceTimersByTime(10_000);
  expect(atMs.length).toBeGreaterThanOrEqual(600);
  expect(atMs.length).toBeLessThanOrEqual(602);
  for (const [i, ms] of atMs.entries()) {
    expect(ms).toBeLessThanOrEqual((i * 1000) / 60 + 1e-6);
    expect(ms).toBeGreaterThan((i * 1000) / 60 - 1.001);
  }
});

test('the first comes at once, but not while subscribing', () => {
  const { atMs } = ticks(20);
  expect(atMs).toEqual([]);
  vi.advanceTimersByTime(1);
  expect(atMs).toHaveLength(1);
});

test('one that takes long does not move those after it, and what was missed is not caught up with', () => {
  const { atMs } = ticks(20, (tick) => {
    if (tick === 2) vi.advanceTimersByTime(15);
    if (tick === 4) vi.advanceTimersByTime(50);
  });
  vi.advanceTimersByTime(160);
  // By hand: the second, due at 20, is busy to 35, which leaves the third at 40; the fourth, from 60 to 110, moves the next.
  const rounded = atMs.map((ms) => Math.round(ms));
  expect(rounded.slice(0, 4)).toEqual([0, 20, 40, 60]);
  expect(rounded.slice(4).map((ms, i) => ms - 110 - 20 * i)).toEqual(rounded.slice(4).map(() => 0));
});

test('nothing comes after the subscription has ended, not even by a tick itself', () => {
  const { atMs, listening } = ticks(10);
  vi.advanceTimersByTime(25);
  const before = atMs.length;
  listening.unsubscribe();
  vi.advanceTimersByTime(100);
  expect(atMs).toHaveLength(before);
  const once: number[] = [];
  const self = evenTicks(10).subscribe(() => {
    once.push(1);
    self.unsubscribe();
  });
  vi.advanceTimersByTime(100);
  expect(once).toEqual([1]);
  expect(vi.getTimerCount()).toBe(0);
});
