import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addStretch } from '../../src/drill/live-error.ts';
import { viewOf } from '../../src/drill/view-of.ts';
import { errorLevel, NO_DEVIATION } from '../../src/score/deviation.ts';
import type { Track } from '../../src/trace/track.ts';
import { feed, fresh, RAMP, START_S } from './drill-rig.ts';

const ORIGIN_S = 100;

/** A rep that is `offset` above the target throughout, from the target's zero to 3 s, in stretches of `batch`. */
function error(offset: (t: number) => number, batch: number): number | null {
  let sum = NO_DEVIATION;
  let held = 0;
  for (let i = 0; i < 3000; i += batch) {
    const count = Math.min(batch, 3000 - i);
    const timeS = Float64Array.from({ length: count }, (_, k) => ORIGIN_S + (i + k + 1) / 1000);
    const value = timeS.map((t) => RAMP.level.at(t - ORIGIN_S) + offset(t - ORIGIN_S));
    const track: Track = { timeS, value };
    const startS = ORIGIN_S + i / 1000;
    const endS = ORIGIN_S + (i + count) / 1000;
    sum = addStretch(sum, RAMP, {
      track,
      from: 0,
      to: count,
      held,
      startS,
      endS,
      originS: ORIGIN_S,
    });
    held = value[count - 1]!;
  }
  return errorLevel(sum);
}

test('a constant difference is its own root mean square', () => {
  expect(error(() => 0.05, 8)).toBeCloseTo(0.05, 3);
  expect(error(() => -0.05, 8)).toBeCloseTo(0.05, 3);
});

test('looks at the release only: 0.05 s before it to 0.25 s after brake off', () => {
  // 0.35 to 1.65 s: a difference of 0.1 in its last quarter second
  const late = error((t) => (t > 1.4 ? 0.1 : 0), 8);
  expect(late).toBeCloseTo(0.1 * Math.sqrt(0.25 / 1.3), 3);
  expect(error((t) => (t < 0.34 || t > 1.66 ? 0.5 : 0), 8)).toBeCloseTo(0, 3);
});

test('does not depend on how the samples are cut', () => {
  const wave = (t: number) => 0.05 * Math.sin(7 * t);
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 3000 }), (batch) => {
      expect(error(wave, batch)).toBeCloseTo(error(wave, 8)!, 9);
    }),
  );
});

test('is nothing before the release', () => {
  expect(errorLevel(NO_DEVIATION)).toBeNull();
});

test('reaches the screen on a shown rep', () => {
  // the brake holds 80 % while the target falls at 80 % per second: 0.55 s of window, 0.5 s of it on the fall
  const held = { brake: (t: number) => (t < START_S ? 0 : 0.8) };
  const { model } = feed(fresh(), held, { fromS: 0, toS: START_S + 0.9 });
  const { liveErrorLevel } = viewOf(model);
  expect(liveErrorLevel).toBeCloseTo(0.8 * Math.sqrt(0.5 ** 3 / 3 / 0.55), 2);
});
