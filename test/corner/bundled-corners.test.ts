import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Car } from '../../src/car/car.ts';
import { buildCorner, variantOfSheet } from '../../src/corner/build-corner.ts';
import type { CornerSheet } from '../../src/corner/corner-sheet.ts';
import { readCornerSheet } from '../../src/corner/read-corner-sheet.ts';
import { type SolvedZone, solveZone } from '../../src/target/derive/derive-zone.ts';
import { GT_CAR } from '../reference/gt-car.ts';

const FOLDER = new URL('../../profiles/corners/', import.meta.url);
const files = readdirSync(FOLDER);
const text = (file: string): string => readFileSync(new URL(file, FOLDER), 'utf8');
const load = (file: string): CornerSheet => readCornerSheet(text(file), file);

/** The variant's grip on the example car's tyres; its other changes to the car are left out here. */
function carFor(sheet: CornerSheet, variant: string): Car {
  const factor = variantOfSheet(sheet, variant).car.gripFactor ?? 1;
  const tyre = {
    ...GT_CAR.tyres.front,
    longitudinalFriction: GT_CAR.tyres.front.longitudinalFriction * factor,
    lateralFriction: GT_CAR.tyres.front.lateralFriction * factor,
  };
  return { ...GT_CAR, tyres: { front: tyre, rear: tyre } };
}

const solve = (sheet: CornerSheet, variant: string): SolvedZone =>
  solveZone(carFor(sheet, variant), buildCorner(sheet, variant));

const slowestKmh = ({ points }: SolvedZone): number => 3.6 * (points.at(-1)?.speedMps ?? 0);

test('twelve braking zones or more, each of its own type', () => {
  expect(files.length).toBeGreaterThanOrEqual(12);
  const sheets = files.map(load);
  expect(new Set(sheets.map(({ cornerType }) => cornerType)).size).toBe(files.length);
  expect(new Set(sheets.map(({ line }) => line.kind)).size).toBe(5);
  expect(new Set(sheets.map(({ line }) => line.sign)).size).toBe(2);
});

describe.each(files)('%s', (file) => {
  const sheet = load(file);
  const names = sheet.variants.map(({ name }) => name);
  const zones = new Map(names.map((name) => [name, solve(sheet, name)]));

  test('names its schema, says why it is there and what to do', () => {
    const [first, second, third] = text(file).split('\n');
    expect(first).toBe('# yaml-language-server: $schema=../schema/corner.schema.json');
    expect(second).toBe('#');
    expect(third).toMatch(/^# \w/);
    expect(sheet.advice).not.toBeNull();
    expect(sheet.name.length).toBeLessThanOrEqual(24);
    expect(names.slice(0, 2)).toEqual(['qualifying', 'race']);
  });

  test.each(names)('%s can be driven by the GT example', (name) => {
    const zone = zones.get(name) as SolvedZone;
    const corner = buildCorner(sheet, name);
    expect(zone.tooFastMps).toBe(0);
    expect(zone.brakePointM).toBeLessThan(0);
    expect(zone.brakePointM).toBeGreaterThan(-corner.approachM);
    // Slowest speeds, braking times and pedal forces as circuits have them (common practice, no source).
    expect(slowestKmh(zone)).toBeGreaterThan(40);
    expect(slowestKmh(zone)).toBeLessThan(185);
    expect(zone.durationS).toBeGreaterThan(1);
    expect(zone.durationS).toBeLessThan(8);
    expect(zone.downshifts.filter(({ safe }) => !safe)).toEqual([]);
  });

  test('the wet is slower and brakes earlier before turn-in, and so does an inner line', () => {
    const dry = zones.get('qualifying') as SolvedZone;
    for (const name of names.filter((n) => n === 'wet' || n === 'defending')) {
      const other = zones.get(name) as SolvedZone;
      expect(slowestKmh(other)).toBeLessThan(slowestKmh(dry));
      expect(other.brakePointM).toBeLessThan(dry.brakePointM);
    }
  });
});
