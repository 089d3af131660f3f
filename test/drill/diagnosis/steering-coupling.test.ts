import { describe, expect, test } from 'vitest';
import {
  couplingReading,
  repCoupling,
  steeringAtShare,
  targetCoupling,
} from '../../../src/drill/diagnosis/steering-coupling.ts';
import type { KeyPoints } from '../../../src/score/rep-score.ts';
import { HAIRPIN } from '../../screens/sample-views.ts';
import { recordOf } from './ramp-reps.ts';

const KEYS = { peakS: 0.5, brakeOffS: 2.5 } as KeyPoints;
/** Full at 0.5 s, off at 2.5 s. */
const falling = (timeS: number): number =>
  timeS < 0 ? 0 : Math.max(0, Math.min(1, timeS / 0.5, (2.5 - timeS) / 2));

/** The brake falls by 0.5 a second, the wheel turns by 30 degrees a second from 0.5 s on: 30 degrees at half brake. */
function turned(side: number) {
  const record = recordOf(falling);
  const { timeS } = record.brake;
  const steering = { timeS, value: timeS.map((t) => side * 30 * Math.max(0, t - 0.5)) };
  return repCoupling({ ...record, steering }, { keyPoints: KEYS })!;
}

describe('brake against wheel', () => {
  test('runs from the peak to brake off', () => {
    const { level, steeringDeg } = turned(1);
    expect([level[0], steeringDeg[0]]).toEqual([1, 0]);
    expect(level.at(-1)).toBeCloseTo(0, 2);
    expect(steeringDeg.at(-1)).toBeCloseTo(60, 1);
    expect(level.length).toBe(201);
  });

  test('the wheel at half of the peak', () => {
    expect(steeringAtShare(turned(1), 0.5)).toBeCloseTo(30, 0);
    expect(steeringAtShare(turned(-1), 0.25)).toBeCloseTo(-45, 0);
  });

  test('a rep that never came off the brake is followed to its end', () => {
    const record = recordOf(() => 0.5);
    const steering = record.brake;
    const held = repCoupling({ ...record, steering }, { keyPoints: { ...KEYS, brakeOffS: null } });
    expect(held!.level.length).toBe(251);
  });

  test('is not known without a wheel, or where the wheel never spoke', () => {
    const record = recordOf(falling);
    expect(repCoupling(record, { keyPoints: KEYS })).toBeNull();
    const steering = { timeS: new Float64Array(0), value: new Float64Array(0) };
    expect(repCoupling({ ...record, steering }, { keyPoints: KEYS })).toBeNull();
    expect(targetCoupling(HAIRPIN)).toBeNull();
  });

  test('of a target', () => {
    const steering = { start: 0, end: 3, at: (timeS: number) => 20 * timeS };
    const { level, steeringDeg } = targetCoupling({ ...HAIRPIN, steering })!;
    expect(level[0]).toBeCloseTo(0.8);
    expect(steeringDeg[0]).toBeCloseTo(20 * 0.18);
    expect(level.at(-1)).toBeCloseTo(0, 2);
  });

  test('in words', () => {
    expect(couplingReading([turned(1), turned(1)], turned(-1))).toBe(
      "with the brake down to half of its peak, the wheel is at 30° left in the median of 2 reps, the target's at 30° right.",
    );
    expect(couplingReading([turned(0)], null)).toBe(
      'with the brake down to half of its peak, the wheel is at 0° of one rep.',
    );
    // straight on until three quarters of the brake are gone, then 60 degrees at once
    const late = {
      level: turned(1).level,
      steeringDeg: turned(1).level.map((l) => (l > 0.2 ? 0 : 60)),
    };
    expect(couplingReading([late], null)).toMatch(/^with the brake down to a tenth .* 60° left/);
    expect(couplingReading([], null)).toBe('no wheel was recorded.');
  });
});
