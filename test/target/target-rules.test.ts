import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { Problem } from '../../src/problem.ts';
import { overTime } from '../../src/target/over-time.ts';
import { checkTarget, readTarget } from '../../src/target/read-target.ts';
import { unmark } from '../profile/unmark.ts';

const TIME = ['name: T', 'corner_type: t', 'domain: time', 'peak_level: 0.8'];
const RISE = 'rise: { duration_s: 0.2 }';
const LINEAR = 'release: { duration_s: 1, shape: linear }';
const DISTANCE = [
  'name: D',
  'corner_type: d',
  'domain: distance',
  'peak_level: 0.8',
  'rise: { length_m: 10 }',
  'brake_point_m: 100',
];

/** Each problem as `line:column what`. */
function problemsOf(text: string): string[] {
  const reading = checkTarget(text, 'a.yaml');
  if (reading.kind === 'read') return [];
  return reading.problems.map((p) => `${p.line}:${p.column} ${p.what}`);
}

describe('values that do not fit each other', () => {
  test.each([
    [
      'a bleed that rises',
      [...TIME, RISE, LINEAR, 'bleed: { duration_s: 1, to_level: ¦0.9 }'],
      'the bleed ends at 0.9',
    ],
    [
      'a knot that rises',
      [
        ...TIME,
        RISE,
        'release: { duration_s: 1, shape: knots, knots: [{ time_s: 0.5, level: 0.3 }, { time_s: 0.7, level: ¦0.4 }] }',
      ],
      'the level goes up to 0.4 during the release',
    ],
    [
      'a knot before the release',
      [
        ...TIME,
        RISE,
        'release: { duration_s: 1, shape: knots, knots: [¦{ time_s: 0.1, level: 0.3 }] }',
      ],
      'the knot is out of order',
    ],
    [
      'a corner after brake off',
      [
        ...TIME,
        RISE,
        'release: { duration_s: 1, shape: two-stage, corner: ¦{ time_s: 1.2, level: 0.3 } }',
      ],
      'the knot is out of order',
    ],
    [
      'an apex before turn-in',
      [...TIME, RISE, LINEAR, 'turn_in_s: 1', 'apex_s: ¦0.9'],
      'the apex does not come after turn-in',
    ],
    [
      'steering without its places',
      [...TIME, RISE, LINEAR, 'turn_in_s: 1', 'steering: ¦{ shape: linear, angle_deg: 9 }'],
      'steering needs turn-in and apex',
    ],
    [
      'two steering knots at one place',
      [
        ...TIME,
        RISE,
        LINEAR,
        'steering: { shape: knots, knots: ¦[{ time_s: 1, angle_deg: 0 }, { time_s: 1, angle_deg: 9 }] }',
      ],
      'two steering knots have the same place',
    ],
    [
      'shifts out of order',
      [...TIME, RISE, LINEAR, 'gears: [{ time_s: 1, gear: 4 }, ¦{ time_s: 0.5, gear: 3 }]'],
      'the shift comes before the one above it',
    ],
    [
      'an upshift',
      [...TIME, RISE, LINEAR, 'gears: [{ time_s: 1, gear: 4 }, { time_s: 2, gear: ¦4 }]'],
      'gear 4 after gear 4 is no downshift',
    ],
    [
      'two forces',
      [...TIME, RISE, LINEAR, 'full_scale: { pedal_force_n: 500, pedal_force_lbf: ¦100 }'],
      'pedal_force_n and pedal_force_lbf say the same',
    ],
    [
      'no room for the release',
      [
        ...DISTANCE,
        'entry_speed_kmh: 200',
        'slowest_speed_kmh: 90',
        'hold_m: 90',
        'release: ¦{ shape: linear }',
      ],
      'nothing is left for the release: it starts 0.0 m before the slowest point',
    ],
    [
      'speeding up',
      [...DISTANCE, 'entry_speed_kmh: 100', 'slowest_speed_mps: ¦28', 'release: { shape: linear }'],
      'the slowest speed is not below the entry speed',
    ],
  ])('%s', (_name, lines, expected) => {
    const { text, place } = unmark(lines.join('\n'));
    expect(problemsOf(text)).toEqual([`${place} ${expected}`]);
  });

  test('over distance a later place has fewer metres', () => {
    const ends = ['entry_speed_kmh: 200', 'slowest_speed_kmh: 90', 'release: { shape: linear }'];
    const place =
      'turn_in_m: 40\napex_m: 0\ngears: [{ distance_m: 80, gear: 4 }, { distance_m: 60, gear: 3 }]';
    expect(problemsOf([...DISTANCE, ...ends, place].join('\n'))).toEqual([]);
  });
});

test('the problem of a file lists them all', () => {
  const text = [
    ...TIME,
    RISE,
    LINEAR,
    'turn_in_s: 1',
    'apex_s: 0.9',
    'gears: [{ time_s: 1, gear: 4 }, { time_s: 2, gear: 5 }]',
  ].join('\n');
  expect(() => readTarget(text, 'here/a.yaml')).toThrow(Problem);
  expect(() => readTarget(text, 'here/a.yaml')).toThrow(
    /^2 problems\n {2}here\/a.yaml:8:9: .*\n {2}here\/a.yaml:9:/,
  );
});

test('any file that fits the schema is a target or a Problem', () => {
  const number = (min: number, max: number): fc.Arbitrary<number> =>
    fc.double({ min, max, noNaN: true });
  const position = number(-20, 20);
  const knot = fc.record({ time_s: position, level: number(0, 1) });
  const release = fc.oneof(
    fc.record({ shape: fc.constantFrom('linear', 'raised-cosine'), duration_s: number(0.001, 20) }),
    fc.record({ shape: fc.constant('two-stage'), duration_s: number(0.001, 20), corner: knot }),
    fc.record({
      shape: fc.constant('knots'),
      duration_s: number(0.001, 20),
      knots: fc.array(knot, { minLength: 1, maxLength: 4 }),
    }),
  );
  const file = fc.record(
    {
      name: fc.constant('T'),
      corner_type: fc.constant('t'),
      domain: fc.constant('time'),
      peak_level: number(0.1, 1),
      rise: fc.record({ duration_s: number(0.001, 20) }),
      release,
      bleed: fc.record({ duration_s: number(0.001, 20), to_level: number(0, 1) }),
      turn_in_s: position,
      apex_s: position,
      steering: fc.record({ shape: fc.constant('linear'), angle_deg: number(-1000, 1000) }),
      gears: fc.array(fc.record({ time_s: position, gear: fc.integer({ min: 1, max: 12 }) }), {
        maxLength: 3,
      }),
    },
    { requiredKeys: ['name', 'corner_type', 'domain', 'peak_level', 'rise', 'release'] },
  );
  fc.assert(
    fc.property(file, (value) => {
      const reading = checkTarget(JSON.stringify(value), 'a.yaml');
      if (reading.kind === 'refused') {
        expect(reading.problems.length).toBeGreaterThan(0);
        return;
      }
      const { level, marks, peakLevel } = overTime(reading.value);
      const samples = Array.from({ length: 50 }, (_, i) => level.at((marks.brakeOff * i) / 49));
      for (const sample of samples) {
        expect(sample).toBeGreaterThanOrEqual(-1e-12);
        expect(sample).toBeLessThanOrEqual(peakLevel + 1e-12);
      }
    }),
    { numRuns: 100 },
  );
});
