import { describe, expect, test } from 'vitest';
import { overridesOfFile } from '../../src/car/car-overrides.ts';
import { checkCar } from '../../src/car/check-car.ts';
import { readCar } from '../profile/read-sound.ts';
import { carText } from './car-files.ts';

const GT = carText('gt.yaml');

/** Problems of the GT's file with one text put for another. */
function problemsWith(found: string, put: string): string[] {
  expect(GT).toContain(found);
  const reading = checkCar(GT.replace(found, put), 'gt.yaml');
  return reading.kind === 'refused'
    ? reading.problems.map(({ line, what, next }) => `${line}: ${what}. ${next}`)
    : [];
}

const lineOf = (found: string): number => GT.slice(0, GT.indexOf(found)).split('\n').length;

test('the id is the file name without folders and ending', () => {
  expect(readCar(GT, 'profiles/cars/gt.yaml').id).toBe('gt');
});

describe('what the schema refuses', () => {
  test.each([
    ['mass_kg: 1300', 'mass: 1300', /mass/],
    ['pitch_hz: 2.0', 'pitch_hz: 0.4', /pitch_hz is 0\.4\. Use a number from 1\.5 to 3/],
    ['push_out_bar: 0.5', 'push_out_bar: much', /push_out_bar/],
    ['blip: true', 'blip: maybe', /blip/],
  ])('%s -> %s', (found, put, message) => {
    const problems = problemsWith(found, put);
    expect(problems.join('\n')).toMatch(message);
    expect(problems.some((problem) => problem.startsWith(`${lineOf(found)}:`))).toBe(true);
  });
});

describe('what only the values together show', () => {
  test.each([
    ['cg_to_rear_axle_m: 1.22', 'cg_to_rear_axle_m: 2.7', /not between the axles/],
    ['fuel: { mass_kg: 70', 'fuel: { mass_kg: 200', null],
    ['    effective_radius_m: 0.16', '    pad_inner_radius_m: 0.14', /radius of the pads/],
    [
      '    effective_radius_m: 0.16',
      '    pad_inner_radius_m: 0.18\n    pad_outer_radius_m: 0.14',
      /not inside/,
    ],
    [
      '    effective_radius_m: 0.16',
      '    effective_radius_m: 0.16\n    pad_inner_radius_m: 0.14',
      /not given once/,
    ],
    ['[2.6, 1.9,', '[1.9, 2.6,', /out of order.*ratios fall/],
    ['{ disc_c: 150,', '{ disc_c: 5,', /out of order.*rising disc_c/],
    ['{ rpm: 4500, torque_nm: 520 }', '{ rpm: 500, torque_nm: 520 }', /rising rpm/],
    ['{ tyre_c: 85,', '{ tyre_c: 45,', /rising tyre_c/],
    ['{ name: used,', '{ name: new,', /given twice/],
    [
      '\ndriver:',
      '\n  anti_lock:\n    front: { release_at_use: 0.9, reapply_at_use: 0.95 }\n    rear: { release_at_use: 0.9, reapply_at_use: 0.8 }\n    release_per_s: 6\n    reapply_per_s: 2\ndriver:',
      /before it is taken away/,
    ],
    [
      '\nstart:',
      '\nhybrid: { rear_torque_nm: 900, power_kw: 100, fade_from_kmh: 60, fade_out_kmh: 80 }\nstart:',
      /gone before it fades/,
    ],
  ])('%s -> %s', (found, put, message) => {
    const problems = problemsWith(found, put);
    if (message === null) expect(problems).toEqual([]);
    else expect(problems.join('\n')).toMatch(message);
  });

  test('fuel of half the mass', () => {
    const light = GT.replace('mass_kg: 1300', 'mass_kg: 135');
    expect(checkCar(light, 'gt.yaml')).toMatchObject({
      problems: [{ what: 'the fuel is half the mass or more' }],
    });
  });
});

test('all problems at once, as one error', () => {
  const text = GT.replace('pitch_hz: 2.0', 'pitch_hz: 9').replace(
    'cg_height_m: 0.45',
    'cg_height_m: x',
  );
  expect(() => readCar(text, 'my.yaml')).toThrow(/^2 problems\n.*my\.yaml:\d+:\d+.*\n.*my\.yaml/);
});

test('keys of a variant become overrides; what is absent stays absent', () => {
  expect(
    overridesOfFile({ grip_factor: 0.7, disc_front_c: 90, pad_rear_c: 60, battery_full: true }),
  ).toEqual({
    gripFactor: 0.7,
    discStartC: { front: 90 },
    padStartC: { rear: 60 },
    batteryFull: true,
  });
});
