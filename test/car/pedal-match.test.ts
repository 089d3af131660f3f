import { describe, expect, test } from 'vitest';
import { buildCar } from '../../src/car/build-car.ts';
import { matchPedal, type RigPedal } from '../../src/car/pedal-match.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CAR } from '../reference/gt-car.ts';
import { bundledCar } from './car-files.ts';

const RIG: RigPedal = {
  peakN: 591.13,
  sensor: 'force',
  deadShare: 0,
  hasWheel: true,
  travelM: null,
  deadStrokeM: null,
  stiffnessNpm: null,
};
const LBF = 4.4482216152605;

describe('peak force', () => {
  test('is the hand-worked 591.13 N of the GT example at 50 m/s, friction 1.4', () => {
    expectRelative(matchPedal(GT_CAR, 50, RIG).carPeakN, 591.13, 1e-5);
  });

  // Within 50 lbf close, within 100 fair, beyond that not good: common practice, no source.
  test.each([
    [591.13, 'close'],
    [591.13 - 49 * LBF, 'close'],
    [591.13 + 51 * LBF, 'fair'],
    [591.13 - 99 * LBF, 'fair'],
    [591.13 - 101 * LBF, 'too light'],
    [591.13 + 101 * LBF, 'too heavy'],
    [null, 'unknown'],
  ])('%f N is %s', (peakN, verdict) => {
    expect(matchPedal(GT_CAR, 50, { ...RIG, peakN }).verdict).toBe(verdict);
  });
});

describe('travel, dead stroke and stiffness', () => {
  const gt = buildCar(bundledCar('gt'));

  test("are the car's and the rig's, and not known where nobody measured", () => {
    const { travelM, deadStrokeM, stiffnessNpm } = matchPedal(gt, 50, RIG);
    expect(travelM).toEqual({ car: 0.045, rig: null });
    expect(deadStrokeM).toEqual({ car: 0.007, rig: null });
    expect(stiffnessNpm).toEqual({ car: 28_000, rig: null });
  });

  test('of the rig follow from its travel, dead zone and peak', () => {
    // 600 N over 40 mm less a tenth is 16.667 N/mm.
    const rig = { ...RIG, peakN: 600, travelM: 0.04, deadShare: 0.1 };
    const match = matchPedal(gt, 50, rig);
    expectRelative(match.deadStrokeM.rig!, 0.004, 1e-12);
    expectRelative(match.stiffnessNpm.rig!, 16_666.667, 1e-7);
    expect(matchPedal(gt, 50, { ...rig, stiffnessNpm: 9000 }).stiffnessNpm.rig).toBe(9000);
  });
});

describe('where the pedals move otherwise', () => {
  const gt = buildCar(bundledCar('gt'));
  // The car: 45 mm of travel, 7 mm of it dead, then 28 N/mm.
  const found = (rig: Partial<RigPedal>): readonly string[] =>
    matchPedal(gt, 50, { ...RIG, ...rig }).movesOtherwise;

  test.each([
    [{ travelM: 0.03, deadStrokeM: 0.007, stiffnessNpm: 28e3 }, ['the car has a longer pedal']],
    [{ travelM: 0.06, deadStrokeM: 0.007, stiffnessNpm: 28e3 }, ['the car has a shorter pedal']],
    [{ travelM: 0.045, deadStrokeM: 0, stiffnessNpm: 28e3 }, ['the car has more dead stroke']],
    [{ travelM: 0.045, deadStrokeM: 0.015, stiffnessNpm: 28e3 }, ['the car has less dead stroke']],
    [{ travelM: 0.045, deadStrokeM: 0.007, stiffnessNpm: 60e3 }, ['the car has a softer pedal']],
    [{ travelM: 0.045, deadStrokeM: 0.007, stiffnessNpm: 9e3 }, ['the car has a stiffer pedal']],
    [{ travelM: 0.04, deadStrokeM: 0.005, stiffnessNpm: 24e3 }, []],
    [{}, []],
  ])('%j', (rig, words) => {
    expect(found(rig)).toEqual(words);
  });
});

describe('what the rig cannot teach', () => {
  const said = (rig: Partial<RigPedal>): string =>
    matchPedal(GT_CAR, 50, { ...RIG, ...rig }).cannotTeach.join('\n');

  test.each<[Partial<RigPedal>, RegExp]>([
    [{ sensor: 'travel' }, /measures travel.*not how hard/],
    [{ sensor: 'unknown' }, /not known/],
    [{ peakN: null }, /never put under known loads/],
    [{ sensor: 'pressure', peakN: null }, /never put under known loads/],
    [{ peakN: 100 }, /How hard the hit is/],
    [{ hasWheel: false }, /braking only/],
  ])('%j', (rig, sentence) => {
    expect(said(rig)).toMatch(sentence);
    expect(said({})).not.toMatch(sentence);
  });

  test('a travel sensor is not asked for newtons', () => {
    expect(said({ sensor: 'travel', peakN: null })).not.toMatch(/known loads/);
  });
});
