import { describe, expect, test } from 'vitest';
import { fitGears } from '../../../src/corner/fit/fit-gears.ts';
import { type FitSignals, fitSignals } from '../../../src/corner/fit/fit-signals.ts';
import type { ZoneSamples } from '../../../src/trace/log/logged-zone.ts';

const RATE_HZ = 50;

/** From 1 s before the brake on. */
function samplesOf(
  untilS: number,
  speed: (timeS: number) => number,
  more: Readonly<Record<string, (timeS: number) => number>> = {},
): ZoneSamples {
  const time = Float64Array.from({ length: (untilS + 1) * RATE_HZ + 1 }, (_, i) => i / RATE_HZ - 1);
  const others = Object.entries(more).map(([role, of]) => [role, time.map(of)] as const);
  return new Map([['time', time], ['speed', time.map(speed)], ...others]) as ZoneSamples;
}

/** 50 m/s, then even braking at 10 m/s^2 for 3 s, then 20 m/s. */
const even = (timeS: number): number => 50 - 10 * Math.min(3, Math.max(0, timeS));

const signalsOf = (samples: ZoneSamples, onsetS: number | null = 0): FitSignals =>
  fitSignals({ number: 4, samples, after: null }, onsetS, null) as FitSignals;
const reasonOf = (samples: ZoneSamples, onsetS: number | null = 0): string =>
  (fitSignals({ number: 4, samples, after: null }, onsetS, null) as { reason: string }).reason;

describe('the signals of a zone', () => {
  test('speeds, and places by the integral of speed: 105 m from 50 to 20 m/s at 10 m/s^2', () => {
    const { approachMps, slowestMps, placeM, timeS } = signalsOf(samplesOf(4, even));
    expect(approachMps).toBeCloseTo(50, 0);
    expect(slowestMps).toBeCloseTo(20, 1);
    expect(placeM[timeS.indexOf(3)]).toBeCloseTo(105, 6);
    expect(placeM[0]).toBeCloseTo(-50, 6);
  });

  test('a slowest point to which the deceleration falls evenly is found where it is', () => {
    // D falls from 12 m/s^2 at 0 s to nothing at 4 s: v = 44 - 12 t + 1.5 t^2, 20 m/s at 4 s
    const bleed = (t: number): number => (t < 0 ? 44 : t < 4 ? 44 - 12 * t + 1.5 * t * t : 20);
    const { slowestS, slowestMps } = signalsOf(samplesOf(5.5, bleed));
    expect(slowestMps).toBeCloseTo(20, 2);
    expect(Math.abs(slowestS - 4)).toBeLessThan(0.05);
  });

  test('a slower corner on the way out is another one', () => {
    const out = Float64Array.from({ length: 200 }, (_, i) => 4.02 + i / RATE_HZ);
    const after = new Map([
      ['time', out],
      ['speed', out.map((t) => (t < 6 ? 20 + 5 * (t - 4) : 30 - 12 * (t - 6)))],
    ]) as ZoneSamples;
    const signals = fitSignals({ number: 1, samples: samplesOf(4, even), after }, 0, null);
    expect(signals).toMatchObject({ slowestMps: expect.closeTo(20, 0) });
    expect((signals as FitSignals).timeS.at(-1)).toBeCloseTo(8, 1);
  });

  test('steering that is positive to the right is turned over', () => {
    const samples = samplesOf(4, even, { steering: () => 90 });
    const right = fitSignals({ number: 1, samples, after: null }, 0, 'right') as FitSignals;
    expect(right.steeringRad![0]).toBeCloseTo(-Math.PI / 2, 9);
  });

  test('a channel with holes is not there', () => {
    const samples = samplesOf(4, even, {
      'yaw-rate': (t) => (t < -0.9 ? Number.NaN : 0.1),
      gear: () => 3,
    });
    expect(signalsOf(samples)).toMatchObject({ yawRadps: null });
    expect(signalsOf(samples).gear).not.toBeNull();
  });

  test.each([
    ['no speed', new Map([['time', Float64Array.of(0, 1)]]) as ZoneSamples, 'has no speed'],
    ['cut at its end', samplesOf(2, even), 'ends while the car still slows'],
    ['a stop', samplesOf(6, (t) => Math.max(0, 30 - 8 * Math.max(0, t))), 'the car stops'],
    ['a standing start', samplesOf(4, (t) => Math.max(0, 6 * (t + 1))), 'standing car'],
    ['a dab', samplesOf(2, (t) => 50 - Math.min(1, Math.max(0, t))), 'hardly slows in it: 1.0 m/s'],
  ])('%s makes no corner', (_, samples, reason) => {
    expect(reasonOf(samples)).toContain(reason);
  });

  test('nor does a zone without an onset', () => {
    expect(reasonOf(samplesOf(4, even), null)).toContain('no onset');
  });
});

describe('gears', () => {
  const gearsOf = (gear: (timeS: number) => number) =>
    fitGears(signalsOf(samplesOf(4, even, { gear })));

  test('neutral between two gears, a flicker and a gear after the slowest point do not count', () => {
    const gear = (t: number): number => {
      if (Math.abs(t - 1) < 0.05 || Math.abs(t - 2) < 0.05) return 0;
      if (Math.abs(t - 2.5) < 0.011) return 6;
      return t > 3.5 ? 4 : t > 2 ? 3 : t > 1 ? 4 : 5;
    };
    const gears = gearsOf(gear)!;
    expect(gears).toMatchObject({ approach: 5, slowest: 3 });
    // by hand: at 1.06 s and 2.06 s, 50 t - 5 t^2
    expect(gears.shiftsM.map(Math.round)).toEqual([47, 82]);
  });

  test('nothing without a logged gear, and nothing where the lower gear is not lower', () => {
    expect(fitGears(signalsOf(samplesOf(4, even)))).toBeNull();
    expect(gearsOf((t) => (t > 1 ? 5 : 3))).toBeNull();
  });
});
