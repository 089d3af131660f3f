import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { RepOutcome } from '../../src/score/rep-score.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import type { Target } from '../../src/target/target.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import {
  type BrakingShape,
  braking,
  type Curve,
  FALLS,
  minJerk,
  record,
  SHAPE,
  shapeTarget,
  targetOf,
} from './curves.ts';

const shapes: fc.Arbitrary<BrakingShape> = fc.record({
  peak: fc.double({ min: 0.2, max: 1, noNaN: true }),
  riseS: fc.double({ min: 0.08, max: 0.4, noNaN: true }),
  holdS: fc.double({ min: 0.1, max: 1, noNaN: true }),
  releaseS: fc.double({ min: 0.6, max: 3, noNaN: true }),
  fall: fc.constantFrom(...Object.values(FALLS)),
});

const lengthS = ({ riseS, holdS, releaseS }: BrakingShape): number => riseS + holdS + releaseS;

/** A rep with everything wrong a little. */
const off: Curve = (t) =>
  0.92 * braking({ ...SHAPE, holdS: 0.21, releaseS: 1.3, fall: FALLS.straight })(t) +
  0.06 * Math.exp(-(((t - 1.1) / 0.07) ** 2));

function scored(rep: RepRecord, target: Target): Extract<RepOutcome, { kind: 'scored' }> {
  const outcome = scoreRep(rep, target);
  if (outcome.kind !== 'scored') throw new Error(outcome.reason);
  return outcome;
}

/** Every number anywhere in a value, with its path. */
function numbersIn(value: unknown, path = ''): [string, number][] {
  if (typeof value === 'number') return [[path, value]];
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, part]) => numbersIn(part, `${path}.${key}`));
}

test('a target against itself scores 100', () => {
  fc.assert(
    fc.property(shapes, (shape) => {
      const rep = record(braking(shape), { toS: lengthS(shape) + 0.7 });
      const outcome = scored(rep, shapeTarget(shape));
      expect(outcome.score).toBeCloseTo(100, 6);
      expect(outcome.releaseErrorLevel).toBeLessThan(1e-9);
      expect(outcome.inCorridor).toBe(1);
      expect(outcome.cause).toBeNull();
      expect(Object.values(outcome.keyPointErrorsS)).toEqual([0, 0, 0, 0]);
    }),
    { numRuns: 30 },
  );
});

describe('what takes no skill scores 0', () => {
  const sweep = (['convex', 'scurve', 'straight'] as const).flatMap((fall) =>
    [0.3, 0.5, 0.8, 1].flatMap((peak) =>
      [0.8, 1.5, 3].map((releaseS) => ({ fall, peak, releaseS })),
    ),
  );

  test.each(sweep)('$fall from $peak over $releaseS s', ({ fall, peak, releaseS }) => {
    const shape = { ...SHAPE, peak, releaseS, fall: FALLS[fall] };
    const target = shapeTarget(shape);
    const level = braking(shape);
    const end = lengthS(shape);
    const mean = meanLevel(level, end);
    const strategies: Record<string, Curve> = {
      nothing: () => 0,
      dump: (t) => (t < 0.32 ? level(t) : 0),
      hold: (t) => (t < 0.3 ? level(t) : peak),
      tap: (t) => peak * Math.exp(-(((t - 0.1) / 0.03) ** 2)),
      mean: (t) => (t < 0 ? 0 : mean),
      onOff: bestOnOff(level, end),
    };
    for (const [name, strategy] of Object.entries(strategies)) {
      expect(scoreRep(record(strategy, { toS: end + 0.7 }), target).score, name).toBe(0);
    }
  });
});

function meanLevel(level: Curve, endS: number): number {
  let sum = 0;
  for (let t = 0; t < endS; t += 0.001) sum += level(t);
  return sum / (endS / 0.001);
}

/**
 * The right hit, then the constant and the switch that come closest to the target over the release window. The best
 * constant up to a switch is the target's mean there.
 */
function bestOnOff(level: Curve, endS: number): Curve {
  const fromS = 0.25;
  const levels = Array.from({ length: Math.round(100 * endS) }, (_, i) => level(fromS + i / 100));
  let best = { gain: 0, constant: 0, switchS: 0 };
  let sum = 0;
  levels.forEach((value, i) => {
    sum += value;
    const gain = sum ** 2 / (i + 1);
    if (gain > best.gain) {
      best = { gain, constant: sum / (i + 1), switchS: fromS + (i + 1) / 100 };
    }
  });
  return (t) => {
    if (t < fromS) return level(t);
    return t < best.switchS ? best.constant : 0;
  };
}

test('a whole rep earlier or later changes nothing but the clock', () => {
  const target = shapeTarget(SHAPE);
  const here = scored(record(off), target);
  fc.assert(
    fc.property(fc.double({ min: -0.2, max: 0.2, noNaN: true }), (shiftS) => {
      const there = scored(record(off, { startS: -0.3 + shiftS }), target);
      expect(there.score).toBe(here.score);
      expect(there.cause).toEqual(here.cause);
      expect(there.keyPointErrorsS).toEqual(here.keyPointErrorsS);
      expect(there.side.startErrorS! - here.side.startErrorS!).toBeCloseTo(shiftS, 9);
    }),
    { numRuns: 20 },
  );
});

test('also where the rep is late by part of a sample', () => {
  const target = shapeTarget(SHAPE);
  const here = scored(record(off), target);
  fc.assert(
    fc.property(fc.double({ min: -0.2, max: 0.2, noNaN: true }), (lateS) => {
      const there = scored(
        record((t) => off(t - lateS), { fromS: -0.6, toS: 2.8 }),
        target,
      );
      expect(Math.abs(there.score - here.score)).toBeLessThan(0.5);
      expect(Math.abs(there.releaseErrorLevel - here.releaseErrorLevel)).toBeLessThan(0.0006);
    }),
    { numRuns: 20 },
  );
});

test('half the sampling rate changes the release error by less than 0.05 % of full scale', () => {
  const target = shapeTarget(SHAPE);
  for (const level of [off, braking({ ...SHAPE, holdS: 0.25 }), braking({ ...SHAPE, peak: 0.7 })]) {
    const fast = scored(record(level), target);
    const slow = scored(record(level, { rateHz: 500 }), target);
    expect(Math.abs(fast.releaseErrorLevel - slow.releaseErrorLevel)).toBeLessThan(0.0005);
    expect(Math.abs(fast.score - slow.score)).toBeLessThan(0.6);
  }
});

test('a device that reports on change only scores the same', () => {
  const target = shapeTarget(SHAPE);
  const stepped: Curve = (t) => Math.round(off(t) * 1023) / 1023;
  const all = record(stepped);
  const keep = [...all.brake.value].map((v, i, values) => i === 0 || v !== values[i - 1]);
  const changes: RepRecord = {
    ...all,
    brake: {
      timeS: all.brake.timeS.filter((_, i) => keep[i]),
      value: all.brake.value.filter((_, i) => keep[i]),
    },
  };
  expect(changes.brake.timeS.length).toBeLessThan(all.brake.timeS.length / 2);
  expect(scoreRep(changes, target)).toEqual(scoreRep(all, target));
});

test('points lost add up to what is missing', () => {
  const target = shapeTarget(SHAPE);
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 1.3, noNaN: true }),
      fc.double({ min: 0.9, max: 2, noNaN: true }),
      fc.double({ min: 0, max: 0.25, noNaN: true }),
      (gain, releaseS, bump) => {
        const level = braking({ ...SHAPE, releaseS });
        const rep: Curve = (t) => gain * level(t) + bump * Math.exp(-(((t - 1) / 0.06) ** 2));
        const { score, pointsLost } = scored(record(rep), target);
        const { release, hit, smooth } = pointsLost;
        expect(release + hit + smooth + score).toBeCloseTo(100, 9);
        for (const lost of [release, hit, smooth]) expect(lost).toBeGreaterThanOrEqual(0);
      },
    ),
    { numRuns: 30 },
  );
});

test('whatever the record holds, the result holds numbers', () => {
  const anything = fc.oneof(
    fc.double({ min: -0.1, max: 1.1 }),
    fc.constantFrom(0, 1, Number.NaN, Number.POSITIVE_INFINITY),
  );
  const target = shapeTarget(SHAPE);
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.double({ min: 0, max: 0.2, noNaN: true }), anything), { maxLength: 60 }),
      fc.boolean(),
      (steps, broken) => {
        let timeS = -0.5;
        const times = steps.map(([dt]) => {
          timeS += dt;
          return timeS;
        });
        const brake = {
          timeS: Float64Array.from(times, (t, i) => (broken && i % 7 === 3 ? Number.NaN : t)),
          value: Float64Array.from(steps, ([, value]) => value),
        };
        const rep: RepRecord = {
          ...record(() => 0),
          brake,
          throttle: brake,
          steering: brake,
          buttons: [{ timeS: 0.2, control: 'paddle', pressed: true, action: 'downshift' }],
          endS: broken ? Number.NaN : timeS + 0.5,
        };
        for (const [path, value] of numbersIn(scoreRep(rep, target))) {
          expect(Number.isFinite(value), path).toBe(true);
        }
      },
    ),
    { numRuns: 150 },
  );
});

describe('refuses', () => {
  test('a target over distance', () => {
    const target: Target = { ...shapeTarget(SHAPE), domain: 'distance' };
    expect(() => scoreRep(record(off), target)).toThrow(/distance/);
  });

  test('a target that never rises', () => {
    const flat = targetOf(() => 0, shapeTarget(SHAPE).marks, 0);
    expect(() => scoreRep(record(off), flat)).toThrow(/never rises/);
  });

  test('a record of more than ten minutes', () => {
    const rep = { ...record(off), endS: 3600 };
    expect(() => scoreRep(rep, shapeTarget(SHAPE))).toThrow(/3600 s, too long/);
  });
});

describe('has no rep in', () => {
  const target = shapeTarget(SHAPE);

  test('a record without samples', () => {
    const none = {
      ...record(off),
      brake: { timeS: new Float64Array(), value: new Float64Array() },
    };
    expect(scoreRep(none, target)).toMatchObject({
      score: 0,
      reason: 'too few samples',
      side: null,
    });
  });

  test('a quarter of a second', () => {
    expect(scoreRep(record(off, { toS: -0.1 }), target)).toMatchObject({
      reason: 'too few samples',
    });
  });

  test('a touch of a tenth of the target', () => {
    const touch = record((t) => 0.07 * minJerk(t / 0.1) * (t < 1 ? 1 : 0));
    expect(scoreRep(touch, target)).toMatchObject({
      score: 0,
      reason: 'peak below a tenth of the target',
    });
  });

  test('a foot that rests on the pedal', () => {
    const outcome = scoreRep(
      record(() => 0.05),
      target,
    );
    expect(outcome).toMatchObject({ reason: 'never braked', side: { startErrorS: null } });
    expect(outcome.side?.restingLevel).toBeCloseTo(0.05, 9);
  });
});
