import { describe, expect, test } from 'vitest';
import { buildCar } from '../../src/car/build-car.ts';
import { buildCorner } from '../../src/corner/build-corner.ts';
import type { CornerSheet } from '../../src/corner/corner-sheet.ts';
import { liveZone } from '../../src/live/build-live-zone.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import type { LiveRun } from '../../src/live/live-run.ts';
import { type DerivedTarget, deriveTarget } from '../../src/target/derive/derive-target.ts';
import { targetFileText } from '../../src/target/derive/target-file-text.ts';
import { readTarget } from '../../src/target/read-target.ts';
import { CARS, SHEETS } from '../target/derive/bundled-zones.ts';
import { PEDAL_ONLY, pointsOver, recordOf } from './rigs.ts';

/** On a smooth road, without anti-lock. */
function derivedOf(file: (typeof CARS)[number], sheet: CornerSheet): DerivedTarget[] {
  return sheet.variants.map((variant) => {
    const car = { ...buildCar(file, variant.car), antiLock: null };
    return deriveTarget(car, { ...buildCorner(sheet, variant.name), bumps: [] });
  });
}

/** What the live car makes of a foot that gives the level of each moment to the letter. */
function drive(derived: DerivedTarget, level: (timeS: number) => number): LiveRun {
  const zone = liveZone({ derived, advice: null, controls: PEDAL_ONLY, call: null });
  // A sample is held over its step: that of the middle.
  const brake = (t: number): number => (t < 0 ? 0 : level(t + 0.0005));
  return driveRecord(zone, recordOf({ brake, endS: derived.zone.durationS + 0.5 }));
}

function lockUps({ end }: LiveRun): readonly string[] {
  return end.events.flatMap((event) => (event.kind === 'lock-up' ? event.axle : []));
}

describe.each(CARS)('the target of $id', (file) => {
  test.each(SHEETS)('in $id, as derived and as its file says, locks no wheel', (sheet) => {
    for (const derived of derivedOf(file, sheet)) {
      const { points } = derived.zone;
      const { variant } = derived.corner;
      const target = readTarget(targetFileText(derived, null), 'own.yaml');
      const distanceM = pointsOver(points, (point) => point.distanceM);
      const asDerived = pointsOver(points, (point) => point.level);
      expect(lockUps(drive(derived, asDerived)), variant).toEqual([]);
      expect(lockUps(drive(derived, (t) => target.level.at(distanceM(t)))), variant).toEqual([]);
    }
  });
});

// Load follows the brakes with a lag, so that a release that only looks at where they are asks too much of the rear axle.
describe.each(CARS)('over the release of $id', (file) => {
  const sheet = SHEETS.find(({ id }) => id === 'kiln-hairpin') as CornerSheet;
  const [derived] = derivedOf(file, sheet) as [DerivedTarget];

  test('both axles stay within their grip, with the loads that the live car has', () => {
    const { points, slowestM } = derived.zone;
    const run = drive(
      derived,
      pointsOver(points, (point) => point.level),
    );
    const { placeM, frontUse, rearUse } = run.columns;
    const from = placeM.findIndex((sM) => sM >= derived.keys.peak.sM);
    const to = placeM.findIndex((sM) => sM >= slowestM);
    expect(Math.max(...frontUse.subarray(from, to))).toBeLessThan(1.03);
    expect(Math.max(...rearUse.subarray(from, to))).toBeLessThan(1.03);
  });
});
