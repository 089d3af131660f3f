import { describe, expect, test } from 'vitest';
import type { CornerSheet } from '../../src/corner/corner-sheet.ts';
import { liveZone } from '../../src/live/build-live-zone.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import type { LiveRun } from '../../src/live/live-run.ts';
import type { LiveZone } from '../../src/live/live-zone.ts';
import type { DerivedTarget } from '../../src/target/derive/derive-target.ts';
import { targetFileText } from '../../src/target/derive/target-file-text.ts';
import { readTarget } from '../../src/target/read-target.ts';
import { CARS, derivedOnSmoothRoad, SHEETS } from '../target/derive/bundled-zones.ts';
import { PEDAL_ONLY, pointsOver, recordOf } from './rigs.ts';

interface Drive {
  readonly derived: DerivedTarget;
  readonly zone: LiveZone;
}

function driveOf(derived: DerivedTarget): Drive {
  return {
    derived,
    zone: liveZone({ derived, advice: null, controls: PEDAL_ONLY, call: null }),
  };
}

/** What the live car makes of a foot that gives the level of each moment to the letter. */
function drive({ derived, zone }: Drive, level: (timeS: number) => number): LiveRun {
  // A sample is held over its step: that of the middle.
  const brake = (t: number): number => (t < 0 ? 0 : level(t + 0.0005));
  return driveRecord(zone, recordOf({ brake, endS: derived.zone.durationS + 0.5 }));
}

function lockUps({ end }: LiveRun): readonly string[] {
  return end.events.flatMap((event) => (event.kind === 'lock-up' ? event.axle : []));
}

describe.each(CARS)('the target of $id', (file) => {
  test.each(SHEETS)('in $id, as derived and as its file says, locks no wheel', (sheet) => {
    for (const derived of derivedOnSmoothRoad(sheet, file)) {
      const { points } = derived.zone;
      const { variant } = derived.corner;
      const target = readTarget(targetFileText(derived, null), 'own.yaml');
      const distanceM = pointsOver(points, (point) => point.distanceM);
      const asDerived = pointsOver(points, (point) => point.level);
      const car = driveOf(derived);
      expect(lockUps(drive(car, asDerived)), variant).toEqual([]);
      expect(lockUps(drive(car, (t) => target.level.at(distanceM(t)))), variant).toEqual([]);
    }
  });
});

// Load follows the brakes with a lag, so that a release that only looks at where they are asks too much of the rear axle.
describe.each(CARS)('over the release of $id', (file) => {
  const sheet = SHEETS.find(({ id }) => id === 'kiln-hairpin') as CornerSheet;
  const [derived] = derivedOnSmoothRoad(sheet, file) as [DerivedTarget];

  test('both axles stay within their grip, with the loads that the live car has', () => {
    const { points, slowestM } = derived.zone;
    const run = drive(
      driveOf(derived),
      pointsOver(points, (point) => point.level),
    );
    const { placeM, frontUse, rearUse } = run.columns;
    const from = placeM.findIndex((sM) => sM >= derived.keys.peak.sM);
    const to = placeM.findIndex((sM) => sM >= slowestM);
    expect(Math.max(...frontUse.subarray(from, to))).toBeLessThan(1.03);
    expect(Math.max(...rearUse.subarray(from, to))).toBeLessThan(1.03);
  });
});
