import { describe, expect, test } from 'vitest';
import { DeviceMeter } from '../../../src/input/rig/device-meter.ts';

/** Feeds reports of one byte: [milliseconds, byte]. */
function fed(reports: readonly (readonly [number, number])[], numbered = false): DeviceMeter {
  const meter = new DeviceMeter('pedals', numbered);
  for (const [ms, byte] of reports) meter.report(ms * 1000, Uint8Array.of(byte), 0, 1);
  return meter;
}

const every = (ms: number, count: number, byte: (i: number) => number): [number, number][] =>
  Array.from({ length: count }, (_, i) => [i * ms, byte(i)]);

describe('rate', () => {
  test('is null before two reports', () => {
    expect(fed([]).read().rateHz).toBeNull();
    expect(fed([[0, 1]]).read()).toMatchObject({ rateHz: null, reports: 1 });
  });

  test('500 reports two milliseconds apart are 500 a second without jitter', () => {
    const reading = fed(every(2, 500, (i) => i % 256)).read();
    expect(reading.rateHz).toBeCloseTo(500, 9);
    expect(reading.p99GapMs).toBe(2);
    expect(reading.jitterMs).toBe(0);
  });

  test('pauses between movements do not count', () => {
    const moving = every(4, 100, (i) => i % 256);
    const again = moving.map(([ms, byte]) => [ms + 60_000, byte] as const);
    expect(fed([...moving, ...again]).read().rateHz).toBeCloseTo(250, 9);
  });

  test('forgets what is older than the window', () => {
    const slow = every(10, 500, (i) => i % 256);
    const fast = every(1, 1025, (i) => i % 256).map(([ms, byte]) => [ms + 5000, byte] as const);
    expect(fed([...slow, ...fast]).read().rateHz).toBeCloseTo(1000, 9);
  });

  test('repeats count as reports but not as news', () => {
    const reading = fed(every(1, 401, (i) => Math.floor(i / 4) % 256)).read();
    expect(reading.rateHz).toBeCloseTo(1000, 9);
    expect(reading.uniqueRateHz).toBeCloseTo(250, 9);
  });
});

test('p99 is the interval that 99 of 100 do not exceed', () => {
  // 98 intervals of 1 ms, then 3 ms and 9 ms: the 99th of the sorted hundred is 3.
  const times = [...Array.from({ length: 99 }, (_, i) => i), 101, 110];
  const reading = fed(times.map((ms, i) => [ms, i % 256])).read();
  expect(reading.p99GapMs).toBe(3);
});

test('jitter is the standard deviation of the intervals', () => {
  // Intervals 2, 4, 4, 4, 5, 5, 7, 9: mean 5, sum of squares 32, sample deviation sqrt(32 / 7).
  const times = [0, 2, 6, 10, 14, 19, 24, 31, 40];
  expect(fed(times.map((ms, i) => [ms, i])).read().jitterMs).toBeCloseTo(Math.sqrt(32 / 7), 9);
});

describe('gaps', () => {
  const silence = (meter: DeviceMeter, untilMs: number): number => {
    meter.until(untilMs * 1000);
    return meter.read().gaps;
  };

  test('a device that reports on change is never late', () => {
    const moving = fed(every(1, 1000, (i) => i % 256));
    expect(moving.read().streamsAtRest).toBe(false);
    expect(silence(moving, 60_000)).toBe(0);
  });

  test('nor is one that repeats itself twice a second', () => {
    expect(silence(fed(every(500, 100, () => 3)), 60_000)).toBe(0);
  });

  test('twenty quick repeats make a stream, nineteen do not', () => {
    expect(fed(every(1, 20, () => 3)).read().streamsAtRest).toBe(false);
    expect(fed(every(1, 21, () => 3)).read().streamsAtRest).toBe(true);
  });

  test('50 ms of silence are none, a little more is one', () => {
    expect(silence(fed(every(1, 101, () => 3)), 150)).toBe(0);
    expect(silence(fed(every(1, 101, () => 3)), 150.001)).toBe(1);
  });

  test('an open gap is counted once and given in pieces that abut', () => {
    const meter = fed(every(1, 101, () => 3));
    expect(silence(meter, 160)).toBe(1);
    expect(silence(meter, 170)).toBe(1);
    meter.report(180_000, Uint8Array.of(3), 0, 1);
    expect(meter.takeGaps()).toEqual([
      { fromS: 0.1, toS: 0.16 },
      { fromS: 0.16, toS: 0.17 },
      { fromS: 0.17, toS: 0.18 },
    ]);
    expect(meter.takeGaps()).toEqual([]);
    expect(silence(meter, 231)).toBe(2);
  });

  test('silence of a device that was unplugged is no gap', () => {
    const meter = fed(every(1, 101, () => 3));
    meter.connect(false);
    expect(silence(meter, 10_000)).toBe(0);
    meter.connect(true);
    meter.report(20_000_000, Uint8Array.of(3), 0, 1);
    expect(meter.read()).toMatchObject({ gaps: 0, connected: true, streamsAtRest: false });
  });
});

test('numbered reports repeat by their id', () => {
  const meter = new DeviceMeter('wheel', true);
  for (let i = 0; i < 60; i++)
    meter.report(i * 1000, Uint8Array.of(1 + (i % 2), i % 2 === 0 ? 7 : 9), 0, 2);
  expect(meter.read().streamsAtRest).toBe(true);
});

test('a report that differs in its last byte says something new', () => {
  const meter = new DeviceMeter('pedals', false);
  for (let i = 0; i < 60; i++) meter.report(i * 1000, Uint8Array.of(9, 1, 2, i % 2, 9), 1, 3);
  expect(meter.read()).toMatchObject({ streamsAtRest: false });
  expect(meter.read().uniqueRateHz).toBeCloseTo(1000, 9);
});

test('what surrounds a report in the buffer is no part of it', () => {
  const meter = new DeviceMeter('pedals', false);
  for (let i = 0; i < 60; i++) meter.report(i * 1000, Uint8Array.of(i, 1, 2, 3, i), 1, 3);
  expect(meter.read().streamsAtRest).toBe(true);
});
