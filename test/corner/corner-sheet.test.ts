import { describe, expect, test } from 'vitest';
import { buildCorner, variantOfSheet } from '../../src/corner/build-corner.ts';
import type { Corner } from '../../src/corner/corner.ts';
import { checkCornerSheet, readCornerSheet } from '../../src/corner/read-corner-sheet.ts';
import { slowestPointM } from '../../src/corner/slowest-point.ts';
import { Problem } from '../../src/problem.ts';
import { solveZone } from '../../src/target/derive/derive-zone.ts';
import { zoneModel, zoneSetting } from '../../src/target/derive/zone-model.ts';
import { expectRelative } from '../close-to.ts';
import { GT_CAR } from '../reference/gt-car.ts';

const SHEET = `name: Test bend
corner_type: right-angle
direction: right
line: { turn_deg: 90, radius_m: 40, entry_length_m: 50 }
approach_speed_kmh: 180
approach_length_m: 250
gears: { approach: 4, slowest: 2 }
variants:
  - variant: qualifying
  - variant: race
    approach_speed_kmh: 170
    grip_share: 0.9
    line_factor: 0.8
    fuel_kg: 60
    gears: { approach: 4, slowest: 3, shifts_before_apex_m: [50] }
`;
const corner = (text: string, variant: string | null = null): Corner =>
  buildCorner(readCornerSheet(text, 'sheets/test-bend.yaml'), variant);
const problemsOf = (text: string): readonly string[] => {
  const reading = checkCornerSheet(text, 'x.yaml');
  return reading.kind === 'read'
    ? []
    : reading.problems.map(({ line, column, what }) => `${line}:${column} ${what}`);
};

describe('a sheet and its variants', () => {
  test('the first variant is the sheet itself, in SI', () => {
    const built = corner(SHEET);
    expect(built).toMatchObject({
      id: 'test-bend',
      name: 'Test bend',
      cornerType: 'right-angle',
      variant: 'qualifying',
      approachSpeedMps: 50,
      approachM: 250,
      gripShare: 1,
      gears: { approach: 4, slowest: 2, shiftsAtM: null },
    });
    expect(built.path.curvatureAt(50)).toBeCloseTo(-1 / 40, 12);
    expect([built.slopeAt(-20), built.bankAt(10), built.bumps.length]).toEqual([0, 0, 0]);
  });

  test('a variant changes what it names, of corner and car', () => {
    const built = corner(SHEET, 'race');
    expectRelative(built.approachSpeedMps, 170 / 3.6, 1e-12);
    expect(built.gripShare).toBe(0.9);
    expect(built.path.curvatureAt(40)).toBeCloseTo(-1 / 32, 12);
    // The apex of the inner line is 40 m from its turn-in.
    expect(built.gears).toEqual({ approach: 4, slowest: 3, shiftsAtM: [-10] });
    const sheet = readCornerSheet(SHEET, 'x.yaml');
    expect(variantOfSheet(sheet, 'race').car).toMatchObject({ fuelKg: 60 });
    expect(variantOfSheet(sheet, 'qualifying').car.fuelKg).toBeUndefined();
  });

  test('an unknown variant names the nearest', () => {
    expect(() => corner(SHEET, 'rase')).toThrow(Problem);
    expect(() => corner(SHEET, 'rase')).toThrow('Test bend has no variant "rase"');
  });
});

describe('road', () => {
  const bumpy = SHEET.replace(
    'variants:',
    'bumps: [{ before_apex_m: 80, length_m: 4, load_loss_share: 0.3 }, { before_apex_m: 12, length_m: 2, load_loss_share: 0.1 }]\nvariants:',
  );

  test('bumps keep their place before the apex, on every line', () => {
    expect(corner(bumpy).bumps).toEqual([
      { atM: -30, lengthM: 4, depth: 0.3 },
      { atM: 38, lengthM: 2, depth: 0.1 },
    ]);
    expect(corner(bumpy, 'race').bumps[0]?.atM).toBe(-40);
  });

  test('a bump before the approach is refused', () => {
    expect(problemsOf(bumpy.replace('before_apex_m: 80', 'before_apex_m: 301'))).toEqual([
      '8:26 the bump lies before the approach',
    ]);
  });

  const sloped = (percent: number): string =>
    SHEET.replace(
      'variants:',
      `slope: [{ before_apex_m: 0, slope_percent: ${percent} }]\nvariants:`,
    );

  test('downhill the brake point is earlier, uphill later, about by g times the slope', () => {
    const brake = (percent: number): number =>
      solveZone(GT_CAR, corner(sloped(percent))).brakePointM;
    const flat = brake(0);
    expect(brake(-6)).toBeLessThan(flat);
    expect(brake(6)).toBeGreaterThan(flat);
    // The straight part at about 1.4 g: 6 % of slope moves 6/140 of its length, and the curved part somewhat more.
    expect((flat - brake(-6)) / -flat).toBeGreaterThan(0.06 / 1.6);
    expect((flat - brake(-6)) / -flat).toBeLessThan(0.2);
  });

  test('values along the road stand where the sheet puts them, smooth between, level outside', () => {
    const built = corner(
      SHEET.replace(
        'variants:',
        'slope: [{ before_apex_m: -10, slope_percent: 0 }, { before_apex_m: 90, slope_percent: -8 }]\nvariants:',
      ),
    );
    expect(built.slopeAt(-300)).toBe(-0.08);
    expect(built.slopeAt(-40)).toBe(-0.08);
    expect(built.slopeAt(10)).toBeCloseTo(-0.04, 12);
    expect(built.slopeAt(60)).toBe(0);
  });

  test.each([8, -5])(
    'a bank of %f percent gives the corner speed of the closed form',
    (percent) => {
      const banked = corner(
        SHEET.replace(
          'variants:',
          `bank: [{ before_apex_m: 0, bank_percent: ${percent} }]\nvariants:`,
        ),
      );
      const car = { ...GT_CAR, aero: { ...GT_CAR.aero, downforceAreaM2: 0, dragAreaM2: 0 } };
      const model = zoneModel('two-axle', zoneSetting(car, banked), [{ fromM: -1e9, gear: 3 }]);
      const slowest = slowestPointM(model, banked.path.lengthM);
      // v^2 = g R (mu + tan b) / (1 - mu tan b): Gillespie, ch. 6, and any text on mechanics; mu 1.4, R 40 m.
      const tan = percent / 100;
      const expected = (9.80665 * 40 * (1.4 + tan)) / (1 - 1.4 * tan);
      expectRelative(model.cornerLimit(slowest), expected, 1e-6);
    },
  );
});

describe('refused with the reason', () => {
  test.each([
    ['entry: constant-radius, turn_deg', '4:16 a line of one constant radius has no taper'],
    ['entry: clothoid, second_radius_m: 20, turn_deg', 'a clothoid line knows no second_radius_m'],
    ['entry: chicane, turn_deg', 'a chicane line has no between_length_m'],
    ['entry: double-apex, turn_deg', 'a double-apex line has no between_radius_m'],
    [
      'entry: decreasing-radius, between_length_m: 20, second_radius_m: 50, turn_deg',
      'the radius grows',
    ],
    [
      'entry: double-apex, between_length_m: 20, between_radius_m: 39, second_radius_m: 30, turn_deg',
      'the line is tighter between the apexes than at them',
    ],
    [
      'exit_length_m: 90, turn_deg',
      'the transitions turn 10.3 degrees more than the line does in all',
    ],
    ['curve: 3, turn_deg', 'unknown key curve'],
  ])('line: { %s ...', (keys, message) => {
    expect(problemsOf(SHEET.replace('turn_deg', keys)).join('\n')).toContain(message);
  });

  test('a line without an entry', () => {
    const found = problemsOf(SHEET.replace(', entry_length_m: 50', ''));
    expect(found[0]).toMatch(/^4:7 a line of one constant radius has no taper/);
  });

  test.each([
    ['slowest: 2', 'slowest: 5', 'gear 5 at the slowest point after gear 4 is no downshift'],
    ['[50]', '[50, 40]', '2 places for 1 downshifts'],
    [
      'slowest: 3, shifts_before_apex_m: [50]',
      'slowest: 2, shifts_before_apex_m: [50, 50]',
      'the shift comes before',
    ],
    ['variant: race', 'variant: qualifying', 'two variants are called qualifying'],
    ['grip_share: 0.9', 'grip_share: 1.1', 'variants[1].grip_share is 1.1'],
  ])('%s as %s', (from, to, message) => {
    expect(problemsOf(SHEET.replace(from, to)).join('\n')).toContain(message);
  });

  test('two slopes at one place', () => {
    const twice =
      'slope: [{ before_apex_m: 5, slope_percent: 1 }, { before_apex_m: 5, slope_percent: 2 }]';
    expect(problemsOf(SHEET.replace('variants:', `${twice}\nvariants:`))).toEqual([
      '8:49 two values of the slope have the same place',
    ]);
  });
});
