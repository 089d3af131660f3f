import { describe, expect, test } from 'vitest';
import type { RepScore } from '../../src/score/rep-score.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import type { Target } from '../../src/target/target.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import {
  braking,
  type Curve,
  FALLS,
  minJerk,
  record,
  SHAPE,
  shapeTarget,
  targetOf,
} from './curves.ts';

function scored(rep: RepRecord, target: Target): RepScore {
  const outcome = scoreRep(rep, target);
  if (outcome.kind !== 'scored') throw new Error(outcome.reason);
  return outcome;
}

describe('on a flat plateau', () => {
  const straight = { ...SHAPE, holdS: 0.4, fall: FALLS.straight };
  const target = shapeTarget(straight);
  const keys = scored(record(braking(straight)), target).keyPoints;

  test('the release is found where a straight line passes 90, 50 and 10 %', () => {
    expect(keys.startOfReleaseS).toBeCloseTo(0.55 + 0.15, 2);
    expect(keys.halfReleaseS).toBeCloseTo(0.55 + 0.75, 2);
    expect(keys.finalReleaseS).toBeCloseTo(0.55 + 1.35, 2);
  });

  test('the peak, 90 % of it and brake off are where they were put', () => {
    expect(keys.peakLevel).toBeCloseTo(0.8, 2);
    expect(keys.peakS).toBeGreaterThan(0.1);
    expect(keys.peakS).toBeLessThan(0.25);
    expect(minJerk(keys.nearPeakS / 0.15)).toBeCloseTo(0.9, 1);
    expect(keys.brakeOffS).toBeCloseTo(0.55 + 1.5 * (1 - 0.015 / 0.8), 2);
  });

  test('a whole rep later moves them all and no error', () => {
    const late = scored(record(braking(straight), { startS: 0.7 }), target);
    expect(late.keyPoints.onsetS - keys.onsetS).toBeCloseTo(1, 6);
    expect(late.keyPoints.brakeOffS! - keys.brakeOffS!).toBeCloseTo(1, 6);
    expect(late.keyPointErrorsS).toEqual({
      startOfRelease: 0,
      halfRelease: 0,
      finalRelease: 0,
      brakeOff: 0,
    });
  });

  test.each([-0.1, 0.12])('a release moved by %s s is off by that at every key point', (lateS) => {
    const rep = record(braking({ ...straight, holdS: 0.4 + lateS }));
    for (const error of Object.values(scored(rep, target).keyPointErrorsS)) {
      expect(error).toBeCloseTo(lateS, 2);
    }
  });

  test('a release that ends a second after the target is still seen to its end', () => {
    const slow = record(braking({ ...straight, holdS: 0.6, releaseS: 2.3 }), { toS: 4 });
    expect(scored(slow, target).keyPointErrorsS.brakeOff).toBeCloseTo(0.2 + 0.8, 1);
    expect(scored(slow, target).flags).toEqual([]);
  });

  test('a short overshoot of the hit leaves the start of release where it is', () => {
    const level = braking(straight);
    const rep: Curve = (t) => level(t) + (t > 0 ? 0.15 * Math.exp(-(((t - 0.16) / 0.04) ** 2)) : 0);
    const { keyPointErrorsS, peakError } = scored(record(rep), target);
    expect(peakError).toBeGreaterThan(0.1);
    expect(keyPointErrorsS.startOfRelease).toBeCloseTo(0, 2);
  });
});

/**
 * Pedal force at the front axle's limit of a car with downforce: 771 N at 75 m/s, 591 N at 50 m/s and 483 N at
 * 25 m/s, that is a constant plus a part that goes with speed squared. 1000 N are full scale.
 */
describe('where pressure bleeds from 771 to 483 N before the release', () => {
  const straightS = 2.4;
  const riseS = 0.12;
  const markS = riseS + straightS;
  const releaseS = 1.2;
  const forceN = (speedMps: number): number => 447.58 + 0.057418 * speedMps ** 2;
  const bleed: Curve = (t) => forceN(75 - 50 * Math.min(1, (t - riseS) / straightS)) / 1000;
  const zone =
    (lateS = 0, gain = 1): Curve =>
    (t) => {
      if (t < riseS) return gain * bleed(riseS) * minJerk(t / riseS);
      const passed = Math.max(0, (t - markS - lateS) / releaseS);
      return gain * bleed(t) * (1 - Math.min(1, passed));
    };
  const marks = {
    rise: 0,
    peak: riseS,
    startOfRelease: markS,
    turnIn: null,
    apex: null,
    finalRelease: markS + 0.9 * releaseS,
    brakeOff: markS + releaseS,
  };
  const target = targetOf(zone(), marks, 0.77056);
  const drive = (level: Curve): RepScore => scored(record(level, { toS: 4.6 }), target);

  test('the forces are those of the car', () => {
    expect(forceN(75)).toBeCloseTo(770.56, 1);
    expect(forceN(50)).toBeCloseTo(591.13, 1);
    expect(forceN(25)).toBeCloseTo(483.47, 1);
  });

  test('the start of release is found at the mark and not in the bleed', () => {
    const keys = drive(zone()).keyPoints;
    expect(keys.startOfReleaseS).toBeCloseTo(markS + 0.1 * releaseS, 2);
    expect(keys.halfReleaseS).toBeCloseTo(markS + 0.5 * releaseS, 2);
    expect(keys.finalReleaseS).toBeCloseTo(markS + 0.9 * releaseS, 2);
  });

  test.each([-0.1, 0.1])('a release moved by %s s is seen as that', (lateS) => {
    const { keyPointErrorsS, cause } = drive(zone(lateS));
    expect(keyPointErrorsS.startOfRelease).toBeCloseTo(lateS, 2);
    expect(keyPointErrorsS.halfRelease).toBeCloseTo(lateS, 2);
    expect(cause?.kind).toBe('timing');
    expect(cause?.timingS).toBeCloseTo(lateS, 2);
  });

  test('a heavy foot alone moves no key point', () => {
    const { keyPointErrorsS, cause } = drive(zone(0, 1.12));
    expect(keyPointErrorsS.startOfRelease).toBeCloseTo(0, 2);
    expect(keyPointErrorsS.finalRelease).toBeCloseTo(0, 2);
    expect(cause).toMatchObject({ kind: 'amount' });
    expect(cause?.amountRatio).toBeCloseTo(1.12, 2);
  });

  test('a perfect rep scores 100', () => {
    expect(drive(zone()).score).toBeCloseTo(100, 9);
  });
});

describe('what never happens', () => {
  const target = shapeTarget(SHAPE);

  test('a brake that is never released has no release', () => {
    const outcome = scored(
      record((t) => 0.8 * minJerk(t / 0.15)),
      target,
    );
    expect(outcome.flags).toContain('not-released');
    expect(outcome.keyPoints).toMatchObject({
      startOfReleaseS: null,
      halfReleaseS: null,
      finalReleaseS: null,
      brakeOffS: null,
    });
    expect(outcome.keyPointErrorsS.brakeOff).toBeNull();
  });

  test('pressure pumped back up counts as not yet released', () => {
    const level = braking(SHAPE);
    const pumped = scored(
      record((t) => level(t) + 0.4 * Math.exp(-(((t - 1.2) / 0.06) ** 2))),
      target,
    );
    expect(pumped.keyPoints.halfReleaseS).toBeGreaterThan(1.2);
    expect(pumped.reapplications).toBe(1);
  });
});
