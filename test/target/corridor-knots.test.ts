import { expect, test } from 'vitest';
import { overTime } from '../../src/target/over-time.ts';
import { checkTarget, readTarget } from '../../src/target/read-target.ts';

const PLAIN = `name: Straight off
corner_type: test
domain: time
rise: { duration_s: 0.2 }
peak_level: 0.8
hold_s: 0.3
release: { duration_s: 1.5, shape: linear }
`;

const read = (more: string) => readTarget(`${PLAIN}${more}`, 'one.yaml');

test('knots widen the corridor where they say more than floor and share', () => {
  const target = read(`corridor:
  knots:
    - { time_s: 0.5, half_width_level: 0.02 }
    - { time_s: 1, half_width_level: 0.1 }
`);
  // the default share of 5 % of 80 % is more than 2 %
  expect(target.corridorAt(0.5)).toBeCloseTo(0.04, 9);
  expect(target.corridorAt(1)).toBeCloseTo(0.1, 9);
  // the last knot holds on
  expect(target.corridorAt(3)).toBeCloseTo(0.1, 9);
});

test('a file without knots keeps the version it always had', () => {
  // of the program before corridors had knots
  expect(read('').version).toBe('ff590e332404afc1');
  expect(
    read(
      'corridor: { knots: [{ time_s: 0, half_width_level: 0.1 }, { time_s: 1, half_width_level: 0.1 }] }',
    ).version,
  ).not.toBe(read('').version);
});

test('over distance they are metres to the slowest point, in any order', () => {
  const target = readTarget(
    `name: Straight off
corner_type: test
domain: distance
brake_point_m: 100
entry_speed_kmh: 180
slowest_speed_kmh: 90
rise: { length_m: 10 }
peak_level: 0.8
hold_m: 20
release: { shape: linear }
corridor:
  knots:
    - { distance_m: 60, half_width_level: 0.06 }
    - { distance_m: 20, half_width_level: 0.12 }
`,
    'one.yaml',
  );
  expect(target.corridorAt(80)).toBeCloseTo(0.06, 9);
  expect(target.corridorAt(10)).toBeCloseTo(0.12, 9);
  const timed = overTime(target);
  expect(timed.corridorAt(timed.marks.brakeOff)).toBeCloseTo(0.12, 6);
});

test('two at one place are refused with their line', () => {
  const reading = checkTarget(
    `${PLAIN}corridor:
  knots:
    - { time_s: 1, half_width_level: 0.1 }
    - { time_s: 1, half_width_level: 0.2 }
`,
    'one.yaml',
  );
  expect(reading).toMatchObject({
    kind: 'refused',
    problems: [{ line: 10, what: 'two corridor knots have the same place' }],
  });
});
