import { describe, expect, test } from 'vitest';
import { forceRemark } from '../../src/commands/force-remark.ts';
import { RAMP } from '../drill/drill-rig.ts';

/** Up to 80 % of so many newtons. */
const of = (pedalForceN: number | null) => ({
  ...RAMP,
  fullScale: { pedalForceN, pressureBar: null },
});

describe('a rig of 700 N at full scale', () => {
  test.each([
    ['one force', [of(875), of(875)], '100 % is 875 N at the pedal, as in the car.'],
    [
      'too much alone',
      [of(1000), of(1100), of(null)],
      'The car takes 880 N, your full scale is 700 N: levels are shares of yours.',
    ],
    [
      'some of each',
      [of(875), of(1000)],
      'Targets of up to 700 N at the pedal are drilled at their force, the others as shares of it.',
    ],
    ['no force at all', [of(null)], null],
  ])('says what levels are: %s', (_, targets, words) => {
    expect(forceRemark(700, targets, 'metric')).toBe(words);
    expect(forceRemark(null, targets, 'metric')).toBeNull();
  });

  test('in pounds for who asked for them', () => {
    expect(forceRemark(700, [of(600)], 'imperial')).toBe(
      '100 % is 135 lbf at the pedal, as in the car.',
    );
  });
});
