import { describe, expect, test } from 'vitest';
import { buildCar } from '../../src/car/build-car.ts';
import { buildCorner } from '../../src/corner/build-corner.ts';
import type { CornerSheet } from '../../src/corner/corner-sheet.ts';
import { liveZone } from '../../src/live/build-live-zone.ts';
import { driveRecord } from '../../src/live/drive-record.ts';
import { type DerivedTarget, deriveTarget } from '../../src/target/derive/derive-target.ts';
import { targetFileText } from '../../src/target/derive/target-file-text.ts';
import { readTarget } from '../../src/target/read-target.ts';
import type { Target } from '../../src/target/target.ts';
import { CARS, derivedOnSmoothRoad, SHEETS } from '../target/derive/bundled-zones.ts';
import { pointsOver, recordOf, WHOLE_RIG } from './rigs.ts';

/** Of the front axle's grip with the load that has come forward, beyond what the corner's target uses. */
const MARGIN = 0.02;
/** The load still arrives for this long after the peak. */
const AFTER_PEAK_S = 0.2;

interface Hit {
  readonly target: Target;
  readonly mostUse: number;
  readonly lockUps: readonly string[];
}

/** What the live car, without anti-lock, makes of the hit of a foot that gives a target file to the letter. */
function driveHit(derived: DerivedTarget): Hit {
  const target = readTarget(targetFileText(derived, null), 'own.yaml');
  const controls = { ...WHOLE_RIG, throttle: false, paddles: false, steering: false };
  const zone = liveZone({ derived, advice: null, controls, call: null });
  const distanceM = pointsOver(derived.zone.points, (point) => point.distanceM);
  const endS = derived.keys.peak.timeS + AFTER_PEAK_S;
  // A sample is held over its step: that of the middle.
  const brake = (t: number): number => (t < 0 ? 0 : target.level.at(distanceM(t + 0.0005)));
  const { columns, end } = driveRecord(zone, recordOf({ brake, endS }));
  return {
    target,
    mostUse: Math.max(...columns.frontUse.subarray(3000)) / derived.corner.gripShare,
    lockUps: end.events.flatMap((event) => (event.kind === 'lock-up' ? event.axle : [])),
  };
}

describe.each(CARS)('the hit of $id’s own target', (file) => {
  test.each(SHEETS)('in $id locks no wheel and stays within the grip of the moment', (sheet) => {
    for (const derived of derivedOnSmoothRoad(sheet, file)) {
      const { mostUse, lockUps } = driveHit(derived);
      expect(lockUps, derived.corner.variant).toEqual([]);
      expect(mostUse, derived.corner.variant).toBeLessThan(1 + MARGIN);
    }
  });
});

describe('with all of the grip', () => {
  const sheet = SHEETS.find(({ id }) => id === 'kiln-hairpin') as CornerSheet;
  const file = CARS.find(({ id }) => id === 'gt') as (typeof CARS)[number];
  const car = buildCar(file, undefined);
  const corner = { ...buildCorner(sheet, 'qualifying'), gripShare: 1, bumps: [] };
  const derived = deriveTarget(car, corner);
  const { target, mostUse } = driveHit(derived);

  test('the push ends where the resting front axle is at its limit, and the rest comes with the load', () => {
    const { pushEnd, keys } = derived;
    expect(pushEnd?.timeS).toBeLessThan(car.driver.riseS);
    expect(mostUse).toBeGreaterThan(0.99);
    expect(keys.peak.timeS).toBeGreaterThan(2 * (pushEnd?.timeS ?? 0));
  });

  test('the file says no more than the derivation, and hardly less', () => {
    for (const { distanceM, level } of derived.zone.points) {
      if (distanceM < keysPeakM(derived)) break;
      expect(target.level.at(distanceM) - level).toBeLessThan(0.0025);
      expect(target.level.at(distanceM) - level).toBeGreaterThan(-0.03);
    }
  });
});

function keysPeakM({ keys }: DerivedTarget): number {
  return keys.peak.distanceM;
}
