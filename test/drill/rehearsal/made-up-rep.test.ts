import { describe, expect, test } from 'vitest';
import { madeUpRep } from '../../../src/drill/rehearsal/made-up-rep.ts';
import { squeezedTarget } from '../../../src/drill/rehearsal/squeezed-target.ts';
import { scoreRep } from '../../../src/score/score-rep.ts';
import { RAMP, setup } from '../drill-rig.ts';

const SPAN = { fromS: -0.5, toS: 2.4 };

describe('a made-up rep', () => {
  test('is scored like any other, with a cause to be found', () => {
    const outcome = scoreRep(madeUpRep(RAMP, SPAN, setup()), RAMP);
    expect(outcome).toMatchObject({ kind: 'scored', flags: [] });
    expect(outcome.kind === 'scored' && outcome.cause).not.toBeNull();
  });

  test('has the axes that the rig has', () => {
    const axes = { throttle: true, clutch: false, steering: false };
    const { brake, throttle, clutch, steering } = madeUpRep(RAMP, SPAN, setup({ axes }));
    expect(brake.timeS).toHaveLength(2900);
    expect(throttle?.timeS).toHaveLength(2900);
    expect([clutch, steering]).toEqual([null, null]);
  });
});

describe('a squeezed target', () => {
  const half = squeezedTarget(RAMP, 0.5);

  // The ramp holds 0.8 to 0.4 s and falls by 0.8 in 1 s: 0.48 at 0.8 s, which is 0.4 s in half of the time.
  test('has its levels and marks in a share of the time', () => {
    expect(half.level.at(0.4)).toBeCloseTo(0.48, 12);
    expect(half.level.end).toBeCloseTo(0.7, 12);
    expect(half.marks).toMatchObject({ startOfRelease: 0.2, turnIn: 0.25, apex: null });
    expect(half.marks.brakeOff).toBeCloseTo(0.7, 12);
  });

  test('can be scored by, down to a twentieth of its time', () => {
    const brisk = squeezedTarget(RAMP, 0.05);
    const rep = madeUpRep(brisk, { fromS: -0.5, toS: 0.7 }, setup());
    expect(scoreRep(rep, brisk).kind).toBe('scored');
  });

  test('is the target itself where nothing is squeezed', () => {
    expect(squeezedTarget(RAMP, 1)).toBe(RAMP);
  });
});
