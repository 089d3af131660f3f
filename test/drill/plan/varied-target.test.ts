import { describe, expect, test } from 'vitest';
import { drawVariation } from '../../../src/drill/plan/variation.ts';
import { variedTarget } from '../../../src/drill/plan/varied-target.ts';
import { seededRandom } from '../../../src/drill/seeded-random.ts';
import { scoreRep } from '../../../src/score/score-rep.ts';
import type { Target } from '../../../src/target/target.ts';
import type { RepRecord } from '../../../src/trace/rep-record.ts';
import { brakeAlone } from '../../trace/brake-alone.ts';
import { RAMP } from '../drill-rig.ts';

const PLAIN = { levelFactor: 1, releaseFactor: 1 };

describe('a varied target', () => {
  // The ramp goes up to 80 % in 0.1 s, holds to 0.4 s and falls over 1 s.
  const varied = variedTarget(RAMP, { levelFactor: 0.75, releaseFactor: 1.2 });

  test('is lighter as a whole and slower from the start of release on', () => {
    expect(varied.level.at(0.05)).toBeCloseTo(0.3, 12);
    expect(varied.level.at(0.3)).toBeCloseTo(0.6, 12);
    expect(varied.level.at(1)).toBeCloseTo(0.3, 12);
    expect(varied.level.at(1.6)).toBeCloseTo(0, 12);
    expect(varied.level.end).toBeCloseTo(1.6, 12);
    expect(varied.peakLevel).toBeCloseTo(0.6, 12);
  });

  test('takes marks and gears along', () => {
    const { marks, gears } = varied;
    expect(marks).toMatchObject({ rise: 0, peak: 0.1, startOfRelease: 0.4, apex: null });
    expect(marks.turnIn).toBeCloseTo(0.52, 12);
    expect(marks.finalRelease).toBeCloseTo(1.48, 12);
    expect(marks.brakeOff).toBeCloseTo(1.6, 12);
    expect(gears.map(({ at }) => at)).toEqual([0.3, expect.closeTo(0.64, 12)]);
  });

  test('takes the steering along', () => {
    const turning: Target = { ...RAMP, steering: { start: 0.5, end: 1.4, at: (x) => 100 * x } };
    const { steering } = variedTarget(turning, { levelFactor: 0.75, releaseFactor: 1.2 });
    expect(steering?.at(0.52)).toBeCloseTo(50, 9);
    expect(steering?.end).toBeCloseTo(1.6, 12);
  });

  test('has a corridor whose share follows the level and whose floor stays', () => {
    const shared: Target = {
      ...RAMP,
      corridorAt: (x) => Math.max(0.015, 0.05 * RAMP.level.at(x)),
    };
    const { corridorAt } = variedTarget(shared, { levelFactor: 0.75, releaseFactor: 1.2 });
    expect(corridorAt(0.3)).toBeCloseTo(0.05 * 0.6, 12);
    expect(corridorAt(1.7)).toBe(0.015);
  });

  test('never enters the statistics of the plain one', () => {
    expect(varied.id).toBe('ramp/varied');
    const versions = [
      variedTarget(RAMP, PLAIN).version,
      varied.version,
      variedTarget(RAMP, { levelFactor: 0.75, releaseFactor: 1 }).version,
      variedTarget({ ...RAMP, version: 'v2' }, PLAIN).version,
      RAMP.version,
    ];
    expect(new Set(versions).size).toBe(5);
    expect(variedTarget(RAMP, { levelFactor: 0.75, releaseFactor: 1.2 }).version).toBe(
      varied.version,
    );
  });

  test('ends at full scale', () => {
    const heavy = variedTarget(RAMP, { levelFactor: 1.5, releaseFactor: 1 });
    expect(heavy.peakLevel).toBe(1);
    expect(heavy.level.at(0.3)).toBe(1);
    expect(heavy.version).toBe(variedTarget(RAMP, { levelFactor: 1.25, releaseFactor: 1 }).version);
  });

  test('is scored on its own: a copy of it is worth more than a copy of the plain one', () => {
    const own = scoreRep(following(varied), varied);
    expect(own.score).toBeGreaterThan(99);
    expect(scoreRep(following(RAMP), varied).score).toBeLessThan(90);
  });
});

/** A rep that follows a target at 1 kHz, from 0.5 s before its start. */
function following({ level }: Target): RepRecord {
  const timeS = Float64Array.from({ length: 3000 }, (_, i) => i / 1000 - 0.5);
  return {
    ...brakeAlone(
      timeS,
      timeS.map((t) => (t < 0 ? 0 : Math.max(0, level.at(t)))),
      2.5,
    ),
    brakeStepLevel: 1 / 4095,
  };
}

describe('a variation', () => {
  const ranges = { level: { from: 0.9, to: 1.1 }, releaseLength: { from: 0.8, to: 1.2 } };
  const draws = Array.from({ length: 400 }, (_, seed) => drawVariation(ranges, seededRandom(seed)));
  const sorted = (values: number[]) => [...new Set(values)].toSorted((a, b) => a - b);

  test('lies in the stated range, in steps of 2 % of the level and 5 % of the release', () => {
    expect(sorted(draws.map(({ levelFactor }) => levelFactor))).toEqual([
      0.9, 0.92, 0.94, 0.96, 0.98, 1, 1.02, 1.04, 1.06, 1.08, 1.1,
    ]);
    expect(sorted(draws.map(({ releaseFactor }) => releaseFactor))).toEqual([
      0.8, 0.85, 0.9, 0.95, 1, 1.05, 1.1, 1.15, 1.2,
    ]);
  });

  test('is the lower end of a range without a step', () => {
    const narrow = { level: { from: 0.905, to: 0.915 }, releaseLength: { from: 1, to: 1 } };
    expect(drawVariation(narrow, seededRandom(1))).toEqual({
      levelFactor: 0.905,
      releaseFactor: 1,
    });
  });
});
