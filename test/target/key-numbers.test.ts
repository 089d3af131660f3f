import { describe, expect, test } from 'vitest';
import { keyNumbers } from '../../src/target/key-numbers.ts';
import { readTarget } from '../../src/target/read-target.ts';
import type { Target } from '../../src/target/target.ts';
import { footMiss, trackWarnings } from '../../src/target/trackability.ts';

function timeTarget(rise: string, release: string, more = ''): Target {
  return readTarget(
    `name: T\ncorner_type: t\ndomain: time\npeak_level: 0.8\nrise: ${rise}\nhold_s: 0.2\nrelease: ${release}\n${more}`,
    't.yaml',
  );
}

describe('key numbers by hand', () => {
  const target = timeTarget(
    '{ duration_s: 0.2, shape: linear }',
    '{ duration_s: 1.6, shape: linear }',
    'turn_in_s: 1.2',
  );
  const numbers = keyNumbers(target);

  test('linear rise: 10 to 90 % is four fifths of it', () => {
    expect(numbers.riseS).toBeCloseTo(0.16, 3);
  });
  test('linear release of 80 % in 1.6 s: 50 % a second throughout', () => {
    expect(numbers.releaseS).toBeCloseTo(1.6, 9);
    expect(numbers.meanReleaseRate).toBeCloseTo(0.5, 3);
    expect(numbers.steepestReleaseRate).toBeCloseTo(0.5, 3);
  });
  test('0.8 of the 2 s of braking come after turn-in', () => {
    expect(numbers.overlap).toBeCloseTo(0.4, 9);
  });
  test('no deceleration without a distance', () => {
    expect(numbers.peakDecelerationMps2).toBeNull();
  });
  test('no overlap without a turn-in', () => {
    const straight = timeTarget('{ duration_s: 0.2 }', '{ duration_s: 1, shape: linear }');
    expect(keyNumbers(straight).overlap).toBeNull();
  });
  test('raised cosine: the steepest is pi / 2 times the average', () => {
    const cosine = timeTarget('{ duration_s: 0.2 }', '{ duration_s: 1.6, shape: raised-cosine }');
    expect(keyNumbers(cosine).steepestReleaseRate).toBeCloseTo((0.5 * Math.PI) / 2, 3);
  });
  test('distance and speeds imply a deceleration', () => {
    const metres = readTarget(
      'name: D\ncorner_type: d\ndomain: distance\npeak_level: 0.8\nentry_speed_mps: 50\nslowest_speed_mps: 20\n' +
        'brake_point_m: 100\nrise: { length_m: 10, shape: linear }\nhold_m: 20\nrelease: { shape: linear, brake_off_m: 10 }',
      'd.yaml',
    );
    // Area 0.8 (5 + 20 + 30) = 44 level metres; (2500 - 400) / 2 / 44 = 23.86364 at full scale.
    expect(keyNumbers(metres).peakDecelerationMps2).toBeCloseTo(0.8 * 23.86364, 3);
  });
});

describe('what a foot of 2 Hz misses', () => {
  // A Gaussian of deviation s rounds a corner where the slope changes by m by m s / sqrt(2 pi); at 2 Hz half power
  // s is sqrt(ln 2) / (4 pi) = 0.066253 s.
  test('the corner of a linear release, against the closed form', () => {
    const slope = 0.8 / 1.6;
    const target = timeTarget('{ duration_s: 0.2 }', '{ duration_s: 1.6, shape: linear }');
    expect(footMiss(target).level).toBeCloseTo((slope * 0.066253) / Math.sqrt(2 * Math.PI), 4);
  });

  test('an instant dump: half of it', () => {
    const target = timeTarget('{ duration_s: 0.2 }', '{ duration_s: 0.004, shape: linear }');
    expect(footMiss(target).level).toBeCloseTo(0.4, 1);
  });
});

describe('warnings', () => {
  test('none for a release of a second and a half', () => {
    const target = timeTarget('{ duration_s: 0.18 }', '{ duration_s: 1.5, shape: linear }');
    expect(trackWarnings(target)).toEqual([]);
  });
  test('a release that no foot follows', () => {
    const target = timeTarget('{ duration_s: 0.18 }', '{ duration_s: 0.3, shape: linear }');
    expect(trackWarnings(target).join()).toMatch(
      /^A foot that follows 2 Hz misses the curve by 7\.0 % at 0\.\d\d s/,
    );
  });
  test('a corner in the middle of the release', () => {
    const target = timeTarget(
      '{ duration_s: 0.18 }',
      '{ duration_s: 2, shape: two-stage, corner: { time_s: 0.45, level: 0.3 } }',
    );
    expect(trackWarnings(target)).toHaveLength(1);
  });
  test('a rise that no foot does', () => {
    const target = timeTarget(
      '{ duration_s: 0.09, shape: linear }',
      '{ duration_s: 1.5, shape: linear }',
    );
    expect(trackWarnings(target)).toEqual([
      'The rise takes 0.072 s from 10 to 90 %; no foot is quicker than about 0.08 s.',
    ]);
  });
  test('a deceleration that no car has', () => {
    const target = readTarget(
      'name: D\ncorner_type: d\ndomain: distance\npeak_level: 0.8\nentry_speed_kmh: 300\nslowest_speed_kmh: 80\n' +
        'brake_point_m: 60\nrise: { length_m: 15 }\nrelease: { shape: linear }',
      'd.yaml',
    );
    expect(trackWarnings(target).join()).toMatch(/ask for \d+\.\d g at the peak/);
  });
});
