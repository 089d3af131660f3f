import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type GroundPoint, planFit } from '../../../src/screens/live/plan-fit.ts';

const SIZE = { cols: 40, rows: 12 };
/** A straight of 100 m into a half circle to the left with a radius of 20 m. */
const ROAD: readonly GroundPoint[] = [
  ...Array.from({ length: 101 }, (_, i) => ({ xM: i - 100, yM: 0 })),
  ...Array.from({ length: 64 }, (_, i) => ({
    xM: 20 * Math.sin((Math.PI * i) / 63),
    yM: 20 * (1 - Math.cos((Math.PI * i) / 63)),
  })),
];

const turnedBy = (angle: number): readonly GroundPoint[] =>
  ROAD.map(({ xM, yM }) => ({
    xM: xM * Math.cos(angle) - yM * Math.sin(angle),
    yM: xM * Math.sin(angle) + yM * Math.cos(angle),
  }));
const angles = fc.double({ min: 0, max: 2 * Math.PI, noNaN: true });

describe('fitting a road into an area', () => {
  test('keeps one scale both ways, inside the area, driven from the left', () => {
    fc.assert(
      fc.property(angles, (angle) => {
        const road = turnedBy(angle);
        const { dotOf, dotsPerM } = planFit(road, SIZE);
        const dots = road.map(dotOf);
        for (const { x, y } of dots) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThan(80);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThan(48);
        }
        expect(dots[0]!.x).toBeLessThanOrEqual(dots.at(-1)!.x);
        for (const [i, j] of [
          [0, 100],
          [0, 163],
          [100, 163],
          [50, 130],
        ] as const) {
          const metres = Math.hypot(road[i]!.xM - road[j]!.xM, road[i]!.yM - road[j]!.yM);
          const apart = Math.hypot(dots[i]!.x - dots[j]!.x, dots[i]!.y - dots[j]!.y);
          expect(Math.abs(apart - dotsPerM * metres)).toBeLessThan(1.5);
        }
      }),
    );
  });

  test('finds about as large a picture whichever way the road lies', () => {
    const best = planFit(ROAD, SIZE).dotsPerM;
    fc.assert(
      fc.property(angles, (angle) => {
        expect(planFit(turnedBy(angle), SIZE).dotsPerM / best).toBeGreaterThan(0.95);
      }),
    );
  });

  test('keeps left turns to the left: nothing is mirrored', () => {
    const { dotOf } = planFit(ROAD, SIZE);
    const [start, end, far] = [dotOf(ROAD[0]!), dotOf(ROAD[100]!), dotOf(ROAD.at(-1)!)];
    // Dots count downwards, so that a turn to the left has a negative cross product.
    const cross = (end.x - start.x) * (far.y - end.y) - (end.y - start.y) * (far.x - end.x);
    expect(cross).toBeLessThan(0);
  });
});
