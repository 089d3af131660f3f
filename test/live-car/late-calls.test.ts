import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { buildCar } from '../../src/car/build-car.ts';
import { buildCorner, variantOfSheet } from '../../src/corner/build-corner.ts';
import { CALL_WORDS, type CallWord } from '../../src/corner/call-word.ts';
import type { CornerSheet } from '../../src/corner/corner-sheet.ts';
import { checkCornerSheet, readCornerSheet } from '../../src/corner/read-corner-sheet.ts';
import { liveZone } from '../../src/live/build-live-zone.ts';
import { callsOf, deriveAfterCall } from '../../src/live/derive-after-call.ts';
import { Problem } from '../../src/problem.ts';
import { type DerivedTarget, deriveTarget } from '../../src/target/derive/derive-target.ts';
import { bundledCar } from '../car/car-files.ts';
import { PEDAL_ONLY } from './rigs.ts';

const FOLDER = new URL('../../profiles/corners/', import.meta.url);
const sheets = readdirSync(FOLDER).map((file) =>
  readCornerSheet(readFileSync(new URL(file, FOLDER), 'utf8'), file),
);
const sheet = sheets.find(({ id }) => id === 'kiln-hairpin') as CornerSheet;
const carFile = bundledCar('gt');
const prepared = deriveTarget(
  buildCar(carFile, variantOfSheet(sheet, 'race').car),
  buildCorner(sheet, 'race'),
);
const called = (word: CallWord): DerivedTarget =>
  deriveAfterCall({ carFile, sheet, variant: 'race', word, heat: null });

test('every word is answered somewhere in the circuit, and three corners have a coach’s mark', () => {
  const answered = new Set(sheets.flatMap(callsOf));
  expect([...answered].sort()).toEqual([...CALL_WORDS].sort());
  expect(sheets.filter(({ coachMark }) => coachMark !== null)).toHaveLength(3);
});

describe('after a late call', () => {
  test('approach, fuel, tyres and brake balance stay as they were prepared', () => {
    for (const word of callsOf(sheet)) {
      const { car, corner } = called(word);
      expect(corner.approachSpeedMps).toBe(prepared.corner.approachSpeedMps);
      expect(corner.gears.approach).toBe(prepared.corner.gears.approach);
      expect(car.chassis).toEqual(prepared.car.chassis);
      expect(car.brakes).toEqual(prepared.car.brakes);
    }
  });

  test('damp is the same line with 0.85 of the grip, braked earlier', () => {
    const { car, corner, zone } = called('damp');
    expect(corner.path.segments).toEqual(prepared.corner.path.segments);
    const ratio =
      car.tyres.front.longitudinalFriction / prepared.car.tyres.front.longitudinalFriction;
    expect(ratio).toBeCloseTo(0.85, 12);
    expect(zone.brakePointM).toBeLessThan(prepared.zone.brakePointM - 5);
  });

  test('defend is the tighter line with the same grip', () => {
    const { car, corner } = called('defend');
    expect(car.tyres).toEqual(prepared.car.tyres);
    expect(corner.path.lengthM).toBeLessThan(0.85 * prepared.corner.path.lengthM);
  });

  test('yellow uses less of the grip there is', () => {
    const { car, corner, keys } = called('yellow');
    expect(car.tyres).toEqual(prepared.car.tyres);
    expect(corner.gripShare).toBe(0.8);
    expect(keys.peak.level).toBeLessThan(prepared.keys.peak.level);
  });

  test('a word without a variant is named, with those there are', () => {
    expect(() => called('car inside')).toThrow(Problem);
    expect(() => called('car inside')).toThrow('no variant for the call "car inside"');
  });
});

describe('the zone of a late call', () => {
  const zone = liveZone({
    derived: called('damp'),
    advice: null,
    controls: PEDAL_ONLY,
    call: { word: 'damp', before: prepared },
  });
  const { call, rollFromM } = zone;

  test('rolls three seconds before the brake point that was prepared', () => {
    const { approachSpeedMps } = prepared.corner;
    expect(rollFromM).toBeCloseTo(prepared.zone.brakePointM - 3 * approachSpeedMps, 9);
  });

  test('the call comes at the 150 m board or in time before the first brake point', () => {
    const firstM = Math.min(zone.derived.zone.brakePointM, prepared.zone.brakePointM);
    expect(call?.atM).toBeLessThanOrEqual(-150);
    expect(firstM - (call?.atM ?? 0)).toBeGreaterThan(0.69 * prepared.corner.approachSpeedMps);
    expect(call?.atM).toBeGreaterThan(rollFromM);
  });

  test('the coach’s mark is where the sheet has it', () => {
    expect(zone.coachMark?.word).toBe('kiln chimney');
    // 46 m from turn-in to the apex.
    expect(zone.coachMark?.sM).toBeCloseTo(46 - 138, 9);
  });
});

test('two variants that answer to one word are a problem, with the line', () => {
  const text = readFileSync(new URL('kiln-hairpin.yaml', FOLDER), 'utf8').replace(
    'call: yellow',
    'call: damp',
  );
  const reading = checkCornerSheet(text, 'x.yaml');
  const line = text.split('\n').findLastIndex((each) => each.includes('call: damp')) + 1;
  expect(reading.kind === 'refused' && reading.problems).toMatchObject([
    { line, what: 'two variants answer to "damp"' },
  ]);
});
