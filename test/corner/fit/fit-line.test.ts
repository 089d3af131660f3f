import { describe, expect, test } from 'vitest';
import { fitLine } from '../../../src/corner/fit/fit-line.ts';

/** A point that moves along a line given by its heading over the way: the yaw rate is what the heading does. */
function driven(
  headingRad: (sM: number) => number,
  { endM, stepM = 0.5, offset = 0, speed = (_: number) => 20 }: DrivenOptions,
): { readonly values: Float64Array; readonly gain: Float64Array; readonly placeM: Float64Array } {
  const placeM = Float64Array.from({ length: Math.floor(endM / stepM) }, (_, i) => i * stepM);
  const gain = placeM.map(speed);
  const small = 1e-4;
  const values = placeM.map(
    (sM, i) =>
      ((headingRad(sM + small) - headingRad(sM - small)) / (2 * small)) * gain[i]! + offset,
  );
  return { values, gain, placeM };
}

interface DrivenOptions {
  readonly endM: number;
  readonly stepM?: number;
  readonly offset?: number;
  readonly speed?: (sM: number) => number;
}

/** Turn-in at 60 m, radius 25 m: an arc's heading grows by 1 rad in 25 m. */
const [TURN_IN_M, RADIUS_M] = [60, 25];

/** A clothoid's heading is s^2 / (2 R L) (Euler's spiral); then an arc of 20 m; then the spiral back. */
function clothoidHeading(entryM: number, arcM: number, exitM: number): (sM: number) => number {
  return (sM) => {
    const s = sM - TURN_IN_M;
    if (s <= 0) return 0;
    const into = Math.min(s, entryM) ** 2 / (2 * RADIUS_M * entryM);
    const on = Math.min(Math.max(0, s - entryM), arcM) / RADIUS_M;
    const x = Math.min(Math.max(0, s - entryM - arcM), exitM);
    return into + on + (x - x ** 2 / (2 * exitM)) / RADIUS_M;
  };
}

/** Curvature (1 - cos(pi s / L)) / 2R integrated: heading (s - (L / pi) sin(pi s / L)) / 2R. */
function smoothHeading(entryM: number): (sM: number) => number {
  return (sM) => {
    const s = sM - TURN_IN_M;
    if (s <= 0) return 0;
    const x = Math.min(s, entryM);
    const into = (x - (entryM / Math.PI) * Math.sin((Math.PI * x) / entryM)) / (2 * RADIUS_M);
    return into + Math.max(0, s - entryM) / RADIUS_M;
  };
}

const WISH = { slowestM: 105, shortestM: 3 };

describe('the line of a turning signal', () => {
  test('a clothoid in, an arc and a clothoid out, to the right, with a drifting gyro', () => {
    const heading = clothoidHeading(40, 20, 30);
    const { placeM, ...signal } = driven((sM) => -heading(sM), { endM: 190, offset: 0.03 });
    const line = fitLine(signal, placeM, WISH)!;
    expect(line.entry).toBe('clothoid');
    expect(line.turnInM).toBeCloseTo(TURN_IN_M, 1);
    expect(line.entryM).toBeCloseTo(40, 1);
    expect(1 / line.curvature).toBeCloseTo(-RADIUS_M, 2);
    expect(line.exit!.arcM).toBeCloseTo(20, 0);
    expect(line.exit!.exitM).toBeCloseTo(30, 0);
    expect(line.missShare).toBeLessThan(0.005);
  });

  test('a raised cosine in, where the log ends on the arc and the car slows on the way', () => {
    const { placeM, ...signal } = driven(smoothHeading(44), {
      endM: 125,
      speed: (sM) => Math.max(15, 55 - 0.4 * sM),
    });
    const line = fitLine(signal, placeM, WISH)!;
    expect(line).toMatchObject({ entry: 'smooth-apex', exit: null, turnsBack: false });
    expect(line.turnInM).toBeCloseTo(TURN_IN_M, 1);
    expect(line.entryM).toBeCloseTo(44, 1);
    expect(1 / line.curvature).toBeCloseTo(RADIUS_M, 2);
    expect(line.missShares.clothoid).toBeGreaterThan(5 * line.missShares['smooth-apex']);
  });

  test('an arc from turn-in on is constant', () => {
    const { placeM, ...signal } = driven((sM) => Math.max(0, sM - TURN_IN_M) / RADIUS_M, {
      endM: 125,
    });
    const line = fitLine(signal, placeM, { ...WISH, slowestM: 70 })!;
    expect(line.entry).toBe('constant');
    expect(line.turnInM).toBeCloseTo(TURN_IN_M, 0);
    expect(1 / line.curvature).toBeCloseTo(RADIUS_M, 2);
  });

  test('two apexes leave over what one bend does not', () => {
    const heading = smoothHeading(30);
    const twice = driven((sM) => heading(sM) + heading(sM - 70), { endM: 240 });
    const { placeM, ...signal } = twice;
    const line = fitLine(signal, placeM, { ...WISH, slowestM: 165 })!;
    expect(line.missShare).toBeGreaterThan(0.06);
  });

  test('a turn the other way is told', () => {
    const heading = clothoidHeading(30, 5, 20);
    const { placeM, ...signal } = driven((sM) => heading(sM) - heading(sM - 60), { endM: 220 });
    expect(fitLine(signal, placeM, { ...WISH, slowestM: 92 })!.turnsBack).toBe(true);
  });

  test('no line without turning', () => {
    const { placeM, ...signal } = driven(() => 0, { endM: 100 });
    expect(fitLine(signal, placeM, WISH)).toBeNull();
  });
});
