import { describe, expect, test } from 'vitest';
import { fitByDeceleration } from '../../../src/corner/fit/fit-by-deceleration.ts';
import { type FitSignals, fitSignals } from '../../../src/corner/fit/fit-signals.ts';

/**
 * A point mass that brakes at its circle into a corner, back from the slowest point in steps of 1 mm:
 * dw/ds = -2 sqrt(a^2 - (w k)^2), with k to its entry's closed form. Sampled at a rate.
 */
function pointMass(
  curvature: (shareOfEntry: number) => number,
  { entryM, radiusM, gripMps2, approachMps, rateHz }: Drive,
): FitSignals {
  const stepM = 1e-3;
  let w = gripMps2 * radiusM;
  const back: { readonly stepS: number; readonly mps: number }[] = [];
  for (let beforeM = stepM; w < approachMps ** 2; beforeM += stepM) {
    const k = curvature(Math.max(0, 1 - beforeM / entryM)) / radiusM;
    w += 2 * stepM * Math.sqrt(Math.max(0, gripMps2 ** 2 - (w * k) ** 2));
    back.push({ stepS: stepM / Math.sqrt(w), mps: Math.sqrt(w) });
  }
  const [timeS, speedMps]: [number[], number[]] = [[], []];
  for (let t = -1; t < 0; t += 1 / rateHz) {
    timeS.push(t);
    speedMps.push(approachMps);
  }
  let [now, next] = [0, 0];
  for (const { stepS, mps } of back.reverse()) {
    if (now >= next - 1e-12) {
      timeS.push(now);
      speedMps.push(mps);
      next += 1 / rateHz;
    }
    now += stepS;
  }
  for (let t = next; t < next + 0.6; t += 1 / rateHz) {
    timeS.push(t);
    speedMps.push(Math.sqrt(gripMps2 * radiusM));
  }
  const samples = new Map([
    ['time', Float64Array.from(timeS)],
    ['speed', Float64Array.from(speedMps)],
  ] as const);
  return fitSignals({ number: 1, samples, after: null }, 0, null) as FitSignals;
}

interface Drive {
  readonly entryM: number;
  readonly radiusM: number;
  readonly gripMps2: number;
  readonly approachMps: number;
  readonly rateHz: number;
}

const smooth = (u: number): number => Math.sin((Math.PI * u) / 2) ** 2;
const linear = (u: number): number => u;
const DRIVE: Drive = { entryM: 50, radiusM: 30, gripMps2: 14, approachMps: 55, rateHz: 50 };

describe('the entry by the fall of deceleration', () => {
  test.each([
    ['smooth-apex', smooth, 14, 50, 1],
    ['smooth-apex', smooth, 14, 20, 1],
    ['smooth-apex', smooth, 11, 100, 1],
    // its deceleration ends in a root and not evenly: the slowest point is reckoned a little late
    ['clothoid', linear, 14, 50, 3],
  ] as const)('%s: %s, grip %s m/s^2 at %s Hz', (entry, curvature, gripMps2, rateHz, withinM) => {
    const fit = fitByDeceleration(pointMass(curvature, { ...DRIVE, gripMps2, rateHz }))!;
    expect(fit.entry).toBe(entry);
    expect(Math.abs(fit.entryM - 50)).toBeLessThan(withinM);
    const w = gripMps2 * DRIVE.radiusM;
    expect(Math.abs(fit.alongMps2 + fit.perSpeedSquared * w - gripMps2)).toBeLessThan(
      0.3 * withinM,
    );
  });

  test('a longer entry is told from a shorter one', () => {
    const of = (entryM: number): number =>
      fitByDeceleration(pointMass(smooth, { ...DRIVE, entryM }))!.entryM;
    expect(of(70) - of(30)).toBeGreaterThan(35);
    expect(of(70) - of(30)).toBeLessThan(45);
  });
});
