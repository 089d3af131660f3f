import { describe, expect, test } from 'vitest';
import type { DerivedTarget } from '../../../src/target/derive/derive-target.ts';
import { targetFileText } from '../../../src/target/derive/target-file-text.ts';
import { zoneJson } from '../../../src/target/derive/zone-json.ts';
import { zoneTable } from '../../../src/target/derive/zone-table.ts';
import { checkTarget } from '../../../src/target/read-target.ts';
import { CARS, derivedIn, SHEETS } from './bundled-zones.ts';

const gearsFit = (derived: DerivedTarget): boolean =>
  derived.corner.gears.approach <= derived.car.gearbox.ratios.length;

describe.each(SHEETS.map((sheet) => ({ id: sheet.id, sheet })))('every car in $id', ({ sheet }) => {
  const derived = CARS.flatMap((car) => derivedIn(sheet, car)).filter((one) => one !== null);

  test('some car brakes for it, and every number is finite', () => {
    expect(derived.length).toBeGreaterThan(0);
    for (const one of derived.filter(gearsFit)) {
      const json = zoneJson(one) as Record<string, readonly unknown[]>;
      const length = json.distance_m?.length ?? 0;
      expect(length).toBeGreaterThan(20);
      const all = Object.values(json).filter(Array.isArray).flat();
      expect(all.filter((each) => typeof each === 'number' && !Number.isFinite(each))).toEqual([]);
    }
  });

  test('loads and brakes settle on each other, or it is said by how little they do not', () => {
    for (const { zone, car, corner } of derived) {
      expect(zone.unsettledM, `${car.id}, ${corner.variant}`).toBeLessThan(0.1);
      // Some of these go to and fro between two answers unless they are made to meet.
      if (['cobble-end', 'lantern-gate'].includes(corner.id)) expect(zone.unsettledM).toBe(0);
    }
  });

  test('no axle is asked for more than it has', () => {
    for (const { zone, car } of derived) {
      const over = zone.points.filter((one) => !(Math.max(one.frontUse, one.rearUse) <= 1 + 1e-6));
      expect(over, car.id).toEqual([]);
    }
  });

  test('its file is read back, within 1.5 % of full scale of the derived level from the peak on', () => {
    for (const one of derived.filter(({ keys }) => keys.peak.level <= 1)) {
      const reading = checkTarget(targetFileText(one, 'Ease it off.'), 'mine.yaml');
      const label = `${one.car.id} ${one.corner.id} ${one.corner.variant}`;
      if (reading.kind === 'refused')
        throw new Error(
          `${label}: ${JSON.stringify(reading.problems)}\n${targetFileText(one, null)}`,
        );
      const { level, gears } = reading.value;
      const { peak } = one.keys;
      const after = one.zone.points.filter(({ sM }) => sM >= peak.sM);
      // A file never rises after the peak: where the level does, it cannot be closer than half of the rise.
      let [least, rise] = [1, 0];
      for (const point of after) {
        least = Math.min(least, point.level);
        rise = Math.max(rise, point.level - least);
      }
      const within = Math.max(0.015, rise / 2 + 0.01);
      const missed = after.filter((one) => {
        const miss = Math.abs(level.at(one.distanceM) - one.level);
        return !(miss < within);
      });
      expect(missed, label).toEqual([]);
      expect(gears.length).toBeLessThanOrEqual(one.zone.downshifts.length);
    }
  });
});

test('loads and brakes that did not settle are told', () => {
  const derived = derivedIn(SHEETS[0] as never, CARS[0] as never)[0] as DerivedTarget;
  const unsettled = { ...derived, zone: { ...derived.zone, unsettledM: 0.06 } };
  expect(zoneTable(unsettled, 'metric').join('\n')).toContain('did not settle');
  expect(zoneTable(derived, 'metric').join('\n')).not.toContain('did not settle');
  expect(zoneJson(unsettled).unsettled_m).toBe(0.06);
});
