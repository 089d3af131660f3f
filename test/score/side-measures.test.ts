import { describe, expect, test } from 'vitest';
import type { RepScore } from '../../src/score/rep-score.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import type { ButtonAction, ButtonEvent } from '../../src/trace/rig-batch.ts';
import type { Track } from '../../src/trace/track.ts';
import { trackOf } from '../trace/track-of.ts';
import { braking, type Curve, FALLS, record, SHAPE, shapeTarget } from './curves.ts';

const straight = { ...SHAPE, fall: FALLS.straight };
const target = shapeTarget(straight);
const level = braking(straight);

/** The rise begins 0.2 s after the cue. */
const CUE_TO_RISE_S = 0.2;
const base = record(level, { fromS: -0.5, startS: -0.5 + CUE_TO_RISE_S });

function side(change: Partial<RepRecord>): RepScore['side'] {
  const outcome = scoreRep({ ...base, ...change }, target);
  if (outcome.kind !== 'scored') throw new Error(outcome.reason);
  return outcome.side;
}

const shift = (timeS: number, action: ButtonAction = 'downshift', pressed = true): ButtonEvent => ({
  timeS,
  control: 'left paddle',
  pressed,
  action,
});

test('the start error is from the cue to where the rise began', () => {
  expect(side({}).startErrorS).toBeCloseTo(CUE_TO_RISE_S, 6);
});

test('what the rig does not have is absent', () => {
  expect(side({})).toMatchObject({
    liftToHitS: null,
    overlapS: null,
    shiftRippleLevel: null,
    steeringLagS: null,
  });
});

describe('lift to hit', () => {
  test('is the time between throttle shut and brake', () => {
    const throttle = trackOf([-0.3, 1], [0.05, 0.5], [0.08, 0.02], [0.1, 0]);
    expect(side({ throttle }).liftToHitS).toBeCloseTo(CUE_TO_RISE_S - 0.08, 6);
  });

  test('is negative where the brake comes first', () => {
    const throttle = trackOf([-0.3, 1], [0.26, 0]);
    expect(side({ throttle }).liftToHitS).toBeCloseTo(CUE_TO_RISE_S - 0.26, 6);
  });

  test('passes over a sample without a time', () => {
    const throttle = trackOf([-0.4, 1], [Number.NaN, 1], [-0.2, 0]);
    expect(side({ throttle }).liftToHitS).toBeCloseTo(CUE_TO_RISE_S + 0.2, 6);
  });

  test('takes the last lift before the brake, not the throttle after the corner', () => {
    const throttle = trackOf([-0.3, 1], [-0.2, 0], [-0.1, 0.4], [0.1, 0], [1.9, 0.6], [2, 0]);
    expect(side({ throttle }).liftToHitS).toBeCloseTo(CUE_TO_RISE_S - 0.1, 6);
  });

  test('is absent without a lift', () => {
    expect(side({ throttle: trackOf([-0.3, 0]) }).liftToHitS).toBeNull();
    expect(side({ throttle: trackOf() }).liftToHitS).toBeNull();
  });
});

test('overlap is the time with both pedals above 5 %', () => {
  const throttle = trackOf([-0.3, 1], [0.3, 0], [0.7, 0.2], [0.9, 0.04]);
  // The brake passes 5 % on its way to 80 % where 10 u^3 - 15 u^4 + 6 u^5 = 1/16.
  const u = 0.20585;
  expect(10 * u ** 3 - 15 * u ** 4 + 6 * u ** 5).toBeCloseTo(1 / 16, 4);
  const before = 0.3 - (CUE_TO_RISE_S + u * 0.15);
  expect(side({ throttle }).overlapS).toBeCloseTo(before + 0.2, 2);
});

test('a resting foot is the level before the onset', () => {
  const resting: Curve = (t) => Math.max(0.02, level(t));
  expect(side({ brake: record(resting, { startS: -0.1 }).brake }).restingLevel).toBeCloseTo(
    0.02,
    6,
  );
});

describe('shift ripple', () => {
  test('is nothing on a steady taper', () => {
    expect(side({ buttons: [shift(1)] }).shiftRippleLevel).toBeLessThan(1e-6);
  });

  test('is the height of a slow wave, half of it either way', () => {
    const wave: Curve = (t) => level(t) + (t > 0.5 ? 0.03 * Math.sin(2 * Math.PI * 5 * t) : 0);
    const brake = record(wave, { fromS: -0.5, startS: -0.5 + CUE_TO_RISE_S }).brake;
    const ripple = side({ brake, buttons: [shift(1.2)] }).shiftRippleLevel!;
    expect(ripple).toBeGreaterThan(0.05);
    expect(ripple).toBeLessThan(0.07);
  });

  test('looks 150 ms either way and no further', () => {
    const blip: Curve = (t) => level(t) + 0.05 * Math.exp(-(((t - 1.2) / 0.02) ** 2));
    const brake = record(blip, { fromS: -0.5, startS: -0.5 + CUE_TO_RISE_S }).brake;
    const at = 1.2 + CUE_TO_RISE_S;
    expect(side({ brake, buttons: [shift(at - 0.1)] }).shiftRippleLevel).toBeGreaterThan(0.02);
    expect(side({ brake, buttons: [shift(at - 0.3)] }).shiftRippleLevel).toBeLessThan(0.001);
    const both = [shift(at - 0.3), shift(at + 0.1, 'upshift')];
    expect(side({ brake, buttons: both }).shiftRippleLevel).toBeGreaterThan(0.02);
  });

  test('is absent without a shift while braking', () => {
    const buttons = [
      shift(1, 'downshift', false),
      shift(1, 'pause'),
      shift(0.1),
      shift(2.3),
      { ...shift(1), action: null },
    ];
    expect(side({ buttons }).shiftRippleLevel).toBeNull();
  });
});

describe('steering lag', () => {
  /** Turns in from 0.6 s to 1.8 s after the cue: half way at 1.2 s. The brake is half off at 0.2 + 0.3 + 0.75 s. */
  const ramp = (sign: number, angle: number): Track =>
    trackOf(
      ...Array.from({ length: 200 }, (_, i): [number, number] => {
        const timeS = i / 100;
        return [timeS, sign * angle * Math.min(1, Math.max(0, (timeS - 0.6) / 1.2))];
      }),
    );

  test.each([1, -1])('is wheel minus brake at one half, turning %s', (sign) => {
    const { steeringLagS } = side({ steering: ramp(sign, 90) });
    expect(steeringLagS).toBeCloseTo(1.2 - 1.25, 2);
  });

  test('is absent where the wheel stays straight', () => {
    expect(side({ steering: ramp(1, 3) }).steeringLagS).toBeNull();
  });
});
