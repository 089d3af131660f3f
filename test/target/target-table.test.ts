import { expect, test } from 'vitest';
import { readTarget } from '../../src/target/read-target.ts';
import { targetTable } from '../../src/target/target-table.ts';

const DISTANCE = `
name: D
corner_type: d
domain: distance
peak_level: 0.8
entry_speed_kmh: 180
slowest_speed_kmh: 72
brake_point_m: 100
rise: { length_m: 10, shape: linear }
hold_m: 20
release: { shape: linear, brake_off_m: 10 }
turn_in_m: 50
apex_m: 0
steering: { shape: raised-cosine, angle_deg: -90 }
gears: [{ distance_m: 70, gear: 3 }]
full_scale: { pedal_force_n: 600, pressure_bar: 50 }
`;

test('key points in the order of the road, then durations, rates and what is left out', () => {
  const lines = targetTable(readTarget(DISTANCE, 'd.yaml'), 'metric');
  expect(lines.slice(0, 7).map((line) => line.replace(/\d+\.\d\d s/, 'T'))).toEqual([
    'start of the rise     T  100.0 m    0.0 %',
    'peak                  T   90.0 m   80.0 %',
    'start of release      T   70.0 m   80.0 %',
    'turn-in               T   50.0 m   53.3 %',
    'final release         T   16.0 m    8.0 %',
    'brake off             T   10.0 m    0.0 %',
    'apex                  T    0.0 m    0.0 %',
  ]);
  const text = lines.join('\n');
  expect(text).toMatch(/^rise +0\.\d\d s from 10 to 90 %$/m);
  expect(text).toMatch(/^release +\d\.\d\d s, mean \d+ %\/s, steepest \d+ %\/s$/m);
  expect(text).toContain('half width 4.0 % at the peak, 1.5 % at brake off');
  expect(text).toContain('90° right at its end');
  expect(text).toContain('180 km/h to 72 km/h');
  // 0.8 of 23.86364 m/s^2 (44 level metres from 50 to 20 m/s) is 1.95 g.
  expect(text).toContain('1.95 g at the peak');
  expect(text).toContain('600 N, 50 bar');
  expect(text).toContain('deceleration proportional to the level');
  for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
});

test('imperial units', () => {
  const text = targetTable(readTarget(DISTANCE, 'd.yaml'), 'imperial').join('\n');
  expect(text).toContain('112 mph to 45 mph');
  expect(text).toContain('328 ft');
  expect(text).toContain('135 lbf, 725 psi');
  expect(text).not.toMatch(/km\/h|\d m |bar/);
});

test('a target over time has no metres and says that it is drawn', () => {
  const text = targetTable(
    readTarget(
      'name: T\ncorner_type: t\ndomain: time\npeak_level: 0.5\nrise: { duration_s: 0.2 }\nrelease: { duration_s: 1, shape: linear }',
      't.yaml',
    ),
    'metric',
  ).join('\n');
  expect(text).toContain('as the coach drew it');
  expect(text).not.toMatch(/ m |steering|gears|full scale|trail braking/);
});
