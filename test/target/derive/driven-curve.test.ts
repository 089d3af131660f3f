import { describe, expect, test } from 'vitest';
import { drivenCurve } from '../../../src/target/derive/driven-curve.ts';
import { gripSpans, meanUse } from '../../../src/target/derive/grip-spans.ts';
import { targetFileText } from '../../../src/target/derive/target-file-text.ts';
import { overTime } from '../../../src/target/over-time.ts';
import { readTarget } from '../../../src/target/read-target.ts';
import type { Target } from '../../../src/target/target.ts';
import { bundledZone } from '../../live-car/bundled-zone.ts';
import { MASS_KG, NO_AIR, PER_PEDAL_N, straightZone } from '../../live-car/straight.ts';

const { derived } = bundledZone('gt', 'kiln-hairpin');
const own = targetOf(derived);

function targetOf(zone: typeof derived): Target {
  return readTarget(targetFileText(zone, null), 'own.yaml');
}

function scaled(target: Target, by: number): Target {
  return { ...target, level: { ...target.level, at: (x) => by * target.level.at(x) } };
}

const pastPeak = (target: Target) => (at: number) =>
  target.domain === 'time' ? at > target.marks.peak : at < target.marks.peak;

// The derivation drives at the limit of an axle at every place: what it is asked for is what there is.
describe.each([
  ['gt', 'kiln-hairpin', null],
  ['gt', 'kiln-hairpin', 'wet'],
  ['touring', 'drovers-bowl', null],
  ['prototype', 'ferry-chicane', null],
  ['light-single-seater', 'heron-sweep', 'race'],
] as const)('the derived target of %s in %s, %s', (car, corner, variant) => {
  const zone = bundledZone(car, corner, variant).derived;
  const target = targetOf(zone);

  test.each([
    ['over distance', target],
    ['over time', overTime(target)],
  ])('%s uses all of the grip, and arrives about as fast as the corner carries', (_, curve) => {
    const { places, arrivesMps, carriesMps } = drivenCurve(zone, curve);
    const { straight, turning } = meanUse(places, pastPeak(curve));
    expect(carriesMps).toBe(zone.keys.slowest.speedMps);
    if (straight !== null) expect(Math.abs(straight - 1)).toBeLessThan(0.015);
    expect(Math.abs((turning ?? 0) - 1)).toBeLessThan(0.035);
    // 1.5 % of full scale, over a whole zone, are a few km/h at its end.
    expect(Math.abs((arrivesMps ?? 0) - carriesMps)).toBeLessThan(1.3);
  });
});

test('a quarter more is a quarter over the grip of the front axle on the straight', () => {
  const { places } = drivenCurve(derived, scaled(own, 1.25));
  const [first] = gripSpans(places);
  expect(first).toMatchObject({ axle: 'front' });
  expect(first!.from).toBeGreaterThan(first!.to);
  expect(meanUse(places, pastPeak(own)).straight).toBeGreaterThan(1.1);
});

test('a third less leaves a third, and arrives much too fast', () => {
  const { places, arrivesMps, carriesMps } = drivenCurve(derived, scaled(own, 0.67));
  expect(gripSpans(places)).toEqual([]);
  const { straight } = meanUse(places, pastPeak(own));
  expect(straight).toBeGreaterThan(0.62);
  expect(straight).toBeLessThan(0.78);
  expect(arrivesMps).toBeGreaterThan(1.5 * carriesMps);
});

test('a level is the pedal force that the file says, in newtons or in bar', () => {
  const most = (target: Target) =>
    meanUse(drivenCurve(derived, target).places, pastPeak(own)).straight;
  const { pedalForceN } = own.fullScale;
  // 19.1 mm of bore, pedal ratio 5, 58 % to the front: bar = N * 5 * 0.58 / (pi / 4 * 19.1 mm^2) / 1e5, worked by hand.
  const barPerNewton = (5 * 0.58) / 286.5211 / 0.1;
  const half = (fullScale: Target['fullScale']) => ({ ...scaled(own, 2), fullScale });
  const newtons = half({ pedalForceN: pedalForceN! / 2, pressureBar: null });
  const bar = half({ pedalForceN: null, pressureBar: (pedalForceN! / 2) * barPerNewton });
  expect(most(newtons)).toBeCloseTo(most(own)!, 6);
  expect(most(bar)).toBeCloseTo(most(own)!, 3);
});

test('much too much stops before the corner', () => {
  expect(drivenCurve(derived, scaled(own, 1.6)).arrivesMps).toBeNull();
});

test('a hit that is quicker than load comes forward is over the grip of the front axle for a moment', () => {
  const { rise, peak } = own.marks;
  const hit = (m: number): Target => {
    const push = (x: number) => own.peakLevel * Math.min(1, Math.max(0, (rise - x) / m));
    const at = (x: number) => (x > peak ? push(x) : own.level.at(x));
    return { ...own, level: { ...own.level, at } };
  };
  const most = (target: Target): number =>
    Math.max(
      ...drivenCurve(derived, target)
        .places.filter(({ at }) => at > own.marks.peak)
        .map(({ frontUse }) => frontUse),
    );
  expect(most(hit(2))).toBeGreaterThan(most(hit(8)) + 0.03);
});

// Half of full scale on a flat straight without air: D = F / (m (1 + k)), v^2 = v0^2 - 2 D s.
test('without air the speed falls by the closed form', () => {
  const { derived: straight } = straightZone(NO_AIR, 60);
  const level = { start: 0, end: 9, at: (timeS: number) => (timeS >= 0 ? 0.5 : 0) };
  const flat: Target = { ...own, domain: 'time', speeds: null, level };
  const slowingMps2 =
    (0.5 * NO_AIR.fullScalePedalForceN * PER_PEDAL_N) / (MASS_KG * (1 + NO_AIR.rotatingShare));
  const lengthM = straight.zone.slowestM - straight.zone.brakePointM;
  const wanted = Math.sqrt(60 ** 2 - 2 * slowingMps2 * lengthM);
  expect(drivenCurve(straight, flat).arrivesMps! / wanted).toBeCloseTo(1, 2);
});
