import { describe, expect, test } from 'vitest';
import { overTime } from '../../src/target/over-time.ts';
import { readTarget } from '../../src/target/read-target.ts';

const TIME = `
name: Test corner
corner_type: test
domain: time
rise: { duration_s: 0.2, shape: linear }
peak_level: 0.8
hold_s: 0.3
bleed: { duration_s: 0.5, to_level: 0.6 }
release: { duration_s: 2, shape: linear }
turn_in_s: 0.9
apex_s: 2.9
steering: { shape: linear, angle_deg: -90 }
gears:
  - { time_s: 0.4, gear: 4 }
  - { time_s: 0.9, gear: 3 }
full_scale: { pedal_force_kgf: 100, pressure_psi: 1000 }
advice: >
  Two
  lines.
`;

const DISTANCE = `
name: Test corner
corner_type: test
domain: distance
entry_speed_kmh: 180
slowest_speed_mps: 20
brake_point_m: 100
rise: { length_m: 10, shape: linear }
peak_level: 0.8
hold_m: 20
release: { shape: linear, brake_off_m: 10 }
turn_in_m: 50
apex_m: 0
steering: { shape: knots, knots: [{ distance_m: 50, angle_deg: 0 }, { distance_m: 0, angle_deg: 60 }] }
gears: [{ distance_m: 70, gear: 3 }]
`;

describe('a target over time', () => {
  const target = readTarget(TIME, 'somewhere/else/test-corner.yaml');

  test('keeps what the file says', () => {
    expect(target).toMatchObject({
      id: 'test-corner',
      name: 'Test corner',
      cornerType: 'test',
      domain: 'time',
      speeds: null,
      peakLevel: 0.8,
      advice: 'Two lines.',
      gears: [
        { at: 0.4, gear: 4 },
        { at: 0.9, gear: 3 },
      ],
    });
    // 100 kgf and 1000 psi by NIST SP 811.
    expect(target.fullScale.pedalForceN).toBeCloseTo(980.665, 9);
    expect(target.fullScale.pressureBar).toBeCloseTo(68.94757, 5);
  });

  test('puts the marks where the phases end', () => {
    const { finalRelease, brakeOff, ...others } = target.marks;
    expect(others).toEqual({ rise: 0, peak: 0.2, startOfRelease: 1, turnIn: 0.9, apex: 2.9 });
    expect(finalRelease).toBeCloseTo(2.8, 9);
    expect(brakeOff).toBeCloseTo(3, 12);
  });

  test('draws the level', () => {
    const at = [-1, 0.1, 0.4, 0.75, 2, 9].map((timeS) => Number(target.level.at(timeS).toFixed(3)));
    expect(at).toEqual([0, 0.4, 0.8, 0.7, 0.3, 0]);
  });

  test('draws the steering, to the right', () => {
    const at = [0, 0.9, 1.9, 2.9, 5].map((timeS) => target.steering?.at(timeS));
    expect(at.map((deg) => Math.round(deg! * 100) / 100 + 0)).toEqual([0, 0, -45, -90, -90]);
  });

  test('has the default corridor: 0.015, or 5 % of the level where that is more', () => {
    expect(target.corridorAt(0.4)).toBeCloseTo(0.04, 6);
    expect(target.corridorAt(2)).toBeCloseTo(0.015, 6);
    expect(target.corridorAt(9)).toBe(0.015);
  });

  test('is its own version over time', () => {
    expect(overTime(target)).toBe(target);
  });
});

describe('a corridor of the coach', () => {
  const target = readTarget(`${TIME}corridor: { floor_level: 0.03, share: 0.1 }`, 'a.yaml');
  test('is used', () => {
    expect(target.corridorAt(0.4)).toBeCloseTo(0.08, 6);
    expect(target.corridorAt(9)).toBe(0.03);
  });
});

describe('a target over distance', () => {
  const target = readTarget(DISTANCE, 'metres.yml');

  test('has marks in metres to the slowest point', () => {
    const { finalRelease, ...others } = target.marks;
    expect(others).toEqual({
      rise: 100,
      peak: 90,
      startOfRelease: 70,
      turnIn: 50,
      apex: 0,
      brakeOff: 10,
    });
    expect(finalRelease).toBeCloseTo(16, 9);
    expect(target.speeds).toEqual({ entryMps: 50, slowestMps: 20 });
  });

  test('draws level and steering against metres', () => {
    const levels = [110, 95, 80, 40, 10, 0].map((m) => Number(target.level.at(m).toFixed(3)));
    expect(levels).toEqual([0, 0.4, 0.8, 0.4, 0, 0]);
    expect([60, 25, 0].map((m) => Math.round(target.steering!.at(m)))).toEqual([0, 30, 60]);
  });

  test('over time: everything is where the car is at that moment', () => {
    const timed = overTime(target);
    // By hand: the area is 0.8 (5 + 20 + 30) = 44 level metres, so full scale is (2500 - 400) / 88 m/s^2; on the
    // plateau v^2 falls by 1.6 * 23.8636 per metre from the 2500 - 8 * 23.8636 that the rise leaves.
    const full = 2100 / 88;
    const [atPeak, atRelease] = [2500 - 8 * full, 2500 - 40 * full].map(Math.sqrt) as [
      number,
      number,
    ];
    const plateauS = (atPeak - atRelease) / (0.8 * full);
    expect(timed.marks.startOfRelease - timed.marks.peak).toBeCloseTo(plateauS, 5);
    expect(timed.gears).toEqual([{ at: timed.marks.startOfRelease, gear: 3 }]);
    expect(timed.marks.apex! - timed.marks.brakeOff).toBeCloseTo(0.5, 9);
    expect(timed.marks.rise).toBe(0);
    expect(timed.domain).toBe('time');
    expect(timed.version).toBe(target.version);
    expect(timed.level.at(timed.marks.peak)).toBeCloseTo(0.8, 3);
    expect(timed.level.end).toBeCloseTo(timed.marks.brakeOff, 9);
    expect(timed.steering!.at(timed.marks.apex!)).toBeCloseTo(60, 1);
    expect(timed.steering!.at(timed.marks.turnIn!)).toBeCloseTo(0, 1);
    expect(timed.corridorAt(timed.marks.peak)).toBeCloseTo(0.04, 4);
  });
});

describe('the version', () => {
  const version = (text: string): string => readTarget(text, 'a.yaml').version;

  test('stays with a change that leaves the score as it is', () => {
    const reworded = TIME.replace('Test corner', 'Other')
      .replace('Two', '# Three')
      .concat('# more');
    expect(version(reworded)).toBe(version(TIME));
    expect(version(TIME.replace('gear: 3', 'gear: 2'))).toBe(version(TIME));
  });

  test.each([
    ['peak', 'peak_level: 0.8', 'peak_level: 0.81'],
    ['rise', 'shape: linear }', 'shape: minimum-jerk }'],
    ['hold', 'hold_s: 0.3', 'hold_s: 0.31'],
    ['bleed', 'to_level: 0.6', 'to_level: 0.61'],
    ['release', 'release: { duration_s: 2,', 'release: { duration_s: 2.01,'],
    ['a mark', 'turn_in_s: 0.9', 'turn_in_s: 0.91'],
    ['corridor', 'peak_level: 0.8', 'peak_level: 0.8\ncorridor: { share: 0.06 }'],
  ])('changes with %s', (_name, from, to) => {
    expect(TIME).toContain(from);
    expect(version(TIME.replace(from, to))).not.toBe(version(TIME));
  });

  test('changes with the speeds of a target over distance', () => {
    const faster = DISTANCE.replace('entry_speed_kmh: 180', 'entry_speed_kmh: 181');
    expect(version(faster)).not.toBe(version(DISTANCE));
    // 180 km/h is 50 m/s.
    expect(version(DISTANCE.replace('entry_speed_kmh: 180', 'entry_speed_mps: 50'))).toBe(
      version(DISTANCE),
    );
  });
});
