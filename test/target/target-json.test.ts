import { describe, expect, test } from 'vitest';
import { readTarget } from '../../src/target/read-target.ts';
import { targetJson } from '../../src/target/target-json.ts';

const TIME = `
name: Test corner
corner_type: test
domain: time
rise: { duration_s: 0.2, shape: linear }
peak_level: 0.8
release: { duration_s: 0.8, shape: linear }
turn_in_s: 0.5
apex_s: 1.2
steering: { shape: linear, angle_deg: 70 }
gears: [{ time_s: 0.4, gear: 3 }]
full_scale: { pedal_force_n: 600 }
`;

describe('over time', () => {
  const json = targetJson(readTarget(TIME, 't.yaml'));

  test('samples the curve every 10 ms until brake off and apex are past', () => {
    const times = json.time_s as number[];
    expect([times[0], times[1], times.at(-1)]).toEqual([0, 0.01, 1.2]);
    for (const column of ['level', 'corridor_level', 'steering_deg'])
      expect(json[column]).toHaveLength(times.length);
    const level = json.level as number[];
    expect([level[10], level[20], level[60], level[120]].map((x) => Number(x!.toFixed(3)))).toEqual(
      [0.4, 0.8, 0.4, 0],
    );
    expect((json.steering_deg as number[])[85]).toBeCloseTo(35, 2);
    expect((json.corridor_level as number[])[20]).toBeCloseTo(0.04, 4);
  });

  test('names what is on it, with units in the names', () => {
    expect(json).toMatchObject({
      id: 't',
      name: 'Test corner',
      corner_type: 'test',
      domain: 'time',
      marks_s: { rise: 0, peak: 0.2, start_of_release: 0.2, turn_in: 0.5, apex: 1.2, brake_off: 1 },
      marks_m: null,
      gears: [{ time_s: 0.4, gear: 3 }],
      peak_level: 0.8,
      release_s: 0.8,
      steering_overlap_share: 0.5,
      peak_deceleration_mps2: null,
      full_scale: { pedal_force_n: 600, pressure_bar: null },
    });
    expect(json).toMatchObject({ distance_m: null, speed_mps: null });
  });

  test('is plain JSON', () => {
    expect(JSON.parse(JSON.stringify(json))).toEqual(json);
  });
});

test('over distance: metres and speed stand beside the seconds', () => {
  const json = targetJson(
    readTarget(
      'name: D\ncorner_type: d\ndomain: distance\npeak_level: 0.8\nentry_speed_mps: 50\nslowest_speed_mps: 20\n' +
        'brake_point_m: 100\nrise: { length_m: 10 }\nrelease: { shape: linear, brake_off_m: 10 }\nturn_in_m: 40',
      'd.yaml',
    ),
  );
  const distance = json.distance_m as number[];
  const speed = json.speed_mps as number[];
  expect(distance[0]).toBe(100);
  expect(speed[0]).toBe(50);
  expect(speed.at(-1)).toBeCloseTo(20, 1);
  expect(distance.at(-1)).toBeLessThanOrEqual(10);
  expect(distance.at(-1)).toBeGreaterThan(9.7);
  // The car covers 10 ms of its speed between two samples.
  for (const i of [20, 100, 200])
    expect(distance[i]! - distance[i + 1]!).toBeCloseTo(
      (0.01 * (speed[i]! + speed[i + 1]!)) / 2,
      4,
    );
  expect(json.marks_m).toMatchObject({
    rise: 100,
    peak: 90,
    turn_in: 40,
    apex: null,
    brake_off: 10,
  });
});
