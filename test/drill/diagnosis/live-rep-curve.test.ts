import { describe, expect, test } from 'vitest';
import { blockGrid } from '../../../src/drill/diagnosis/block-grid.ts';
import { liveRepCurve } from '../../../src/drill/diagnosis/live-rep-curve.ts';
import { scoreLiveRep } from '../../../src/score/score-live-rep.ts';
import { bundledZone } from '../../live-car/bundled-zone.ts';
import { pointsOver, recordOf } from '../../live-car/rigs.ts';

const zone = bundledZone('gt', 'lantern-gate', 'race');
const grid = blockGrid(zone.target);

/** A foot that does what the target does over time, later and by a factor. */
function meanErrors(laterS: number, factor: number): Record<string, number> {
  const { points, durationS } = zone.derived.zone;
  const level = pointsOver(points, (p) => p.level);
  const record = recordOf({
    brake: (t) => (t < laterS ? 0 : factor * level(t - laterS)),
    endS: durationS + laterS + 0.6,
  });
  const outcome = scoreLiveRep(record, zone);
  if (outcome.kind !== 'scored') throw new Error('not scored');
  const curve = liveRepCurve(record, outcome, zone, grid);
  return Object.fromEntries(
    Object.entries(grid.phases).map(([phase, { from, to }]) => {
      const errors = curve.subarray(from, to).map((value, i) => value - grid.target[from + i]!);
      return [phase, errors.reduce((sum, error) => sum + error, 0) / (to - from)];
    }),
  );
}

const meanLevel = ({ from, to }: { from: number; to: number }): number =>
  grid.target.subarray(from, to).reduce((sum, level) => sum + level, 0) / (to - from);

describe('the curve of a rep with the live car', () => {
  test('lies on the target where the foot does what the target says', () => {
    const { hit, ...release } = meanErrors(0, 1);
    for (const error of Object.values(release)) expect(Math.abs(error)).toBeLessThan(0.005);
    // the onset is found to 10 ms, and the rise to 56 % takes 0.2 s of a hit of 0.32 s
    expect(Math.abs(hit!)).toBeLessThan((0.56 * 0.01) / 0.32 + 0.002);
  });

  test('a brake point 0.15 s late is no error of the hit', () => {
    expect(Math.abs(meanErrors(0.15, 1).hit!)).toBeLessThan(0.02);
  });

  test('a foot 8 % light is light by that in the hit, whatever the speed has become', () => {
    const more = meanErrors(0, 0.92).hit! - meanErrors(0, 1).hit!;
    const share = more / meanLevel(grid.phases.hit);
    expect(share).toBeGreaterThan(-0.1);
    expect(share).toBeLessThan(-0.06);
  });

  test('a car that arrives faster is held against its place, not against the clock', () => {
    // 8 % less brake leaves the car some km/h faster and so some 0.1 s earlier at the slowest point, where the foot,
    // which goes by the clock, is still on the brake: heavy there, and light only before.
    expect(meanErrors(0, 0.92)['last 10 %']!).toBeGreaterThan(0);
  });
});
