import { describe, expect, test } from 'vitest';
import { scoreLiveRep } from '../../../src/score/score-live-rep.ts';
import { bundledZone, recordOfTarget } from '../../live-car/bundled-zone.ts';
import { PEDAL_ONLY } from '../../live-car/rigs.ts';

/** The radius falls in two steps: a foot that lets go in no time comes off for the first and back on for the second. */
const ZONE = bundledZone('gt', 'coil-bend', 'race', PEDAL_ONLY, (car) => ({
  ...car,
  driver: { ...car.driver, releaseNps: Number.POSITIVE_INFINITY },
}));
const asked = recordOfTarget(ZONE);

describe('where the road asks for pressure again', () => {
  const levels = ZONE.derived.zone.points.map(({ level }) => level);
  const lowest = levels.indexOf(Math.min(...levels.slice(0, -20)));

  test('the target does go up again', () => {
    expect(Math.max(...levels.slice(lowest)) - levels[lowest]!).toBeGreaterThan(0.03);
  });

  test('a foot that gives what is asked has re-applied nothing', () => {
    const outcome = scoreLiveRep(asked, ZONE);
    expect(outcome).toMatchObject({ kind: 'scored', reapplications: 0, parts: { smooth: 1 } });
  });

  test('a foot that pumps on top of it has', () => {
    const { timeS, value } = asked.brake;
    const pumped = value.map((level, i) => {
      const t = timeS[i]!;
      return t > 0.6 && t < 1.2 ? level * (0.8 + 0.2 * Math.cos(2 * Math.PI * 5 * t)) : level;
    });
    const outcome = scoreLiveRep({ ...asked, brake: { timeS, value: pumped } }, ZONE);
    if (outcome.kind !== 'scored') throw new Error(outcome.reason);
    expect(outcome.reapplications).toBeGreaterThanOrEqual(2);
    expect(outcome.parts.smooth).toBeLessThan(0.8);
  });
});
