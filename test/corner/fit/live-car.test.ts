import { expect, test } from 'vitest';
import { buildCar } from '../../../src/car/build-car.ts';
import { buildCorner } from '../../../src/corner/build-corner.ts';
import { type FitSignals, fitSignals } from '../../../src/corner/fit/fit-signals.ts';
import { fitZone } from '../../../src/corner/fit/fit-zone.ts';
import { liveZone } from '../../../src/live/build-live-zone.ts';
import { driveRecord } from '../../../src/live/drive-record.ts';
import { zoneKeys } from '../../../src/score/zone-keys.ts';
import { deriveTarget } from '../../../src/target/derive/derive-target.ts';
import { fitCarOf } from '../../../src/target/derive/fit-car-of.ts';
import { zoneRecord } from '../../../src/trace/log/zone-record.ts';
import { pointsOver, recordOf, WHOLE_RIG } from '../../live-car/rigs.ts';
import { CARS, SHEETS } from '../../target/derive/bundled-zones.ts';
import { importText } from '../../trace/log/import-text.ts';

/** Off the brake the driver goes back on the throttle soon. */
const COAST_S = 0.1;
const AFTER_S = 2.5;

interface LoggedDrive {
  readonly text: string;
  /** Speed of the car at a place from turn-in, and the least there was. */
  readonly speedMps: (sM: number) => number;
  readonly slowestMps: number;
}

/** A foot that follows its target in the live car, logged at 50 Hz: brake in per cent, speed in mph, steering in rad. */
function loggedDrive(carId: string, cornerId: string): LoggedDrive {
  const sheet = SHEETS.find(({ id }) => id === cornerId)!;
  const car = buildCar(CARS.find(({ id }) => id === carId)!, sheet.variants[0]!.car);
  const derived = deriveTarget(car, { ...buildCorner(sheet, null), bumps: [] });
  const { points, durationS } = derived.zone;
  const level = pointsOver(points, (point) => Math.min(1, point.level));
  const zone = liveZone({
    derived,
    advice: null,
    controls: { ...WHOLE_RIG, steering: false, paddles: false },
    call: null,
  });
  const { columns } = driveRecord(
    zone,
    recordOf({
      brake: (t) => (t < 0 || t > durationS ? 0 : level(t + 0.0005)),
      throttle: (t) => (t > durationS + COAST_S ? 0.4 : 0),
      endS: durationS + AFTER_S,
    }),
  );
  const { timeS, speedMps, steeringRad, accelYMps2 } = columns;
  const rows: string[] = [];
  for (let i = 0; i < timeS.length; i += 20)
    rows.push(
      [
        (timeS[i]! + 10).toFixed(3),
        (100 * columns.level[i]!).toFixed(1),
        (speedMps[i]! / 0.44704).toFixed(2),
        steeringRad[i]!.toFixed(3),
        (accelYMps2[i]! / speedMps[i]!).toFixed(4),
      ].join(','),
    );
  return {
    text: `time_s,brake [%],speed [mph],steering [rad],yaw rate [rad/s]\n${rows.join('\n')}\n`,
    speedMps: (sM) => speedMps[columns.placeM.findIndex((place) => place >= sM)]!,
    slowestMps: Math.min(...speedMps),
  };
}

test.each([
  ['gt', 'kiln-hairpin'],
  ['gt', 'weavers-corner'],
  ['touring', 'kiln-hairpin'],
  ['touring', 'lantern-gate'],
  ['single-seater', 'old-railway'],
])('%s driven in the live car gives %s back', (carId, cornerId) => {
  const drive = loggedDrive(carId, cornerId);
  const { zones, summary } = importText(drive.text);
  expect(zones).toHaveLength(1);
  const keys = zoneKeys(zoneRecord(zones[0]!, summary.brake, 1, summary.steeringPositive));
  const signals = fitSignals(zones[0]!, keys!.onsetS, summary.steeringPositive) as FitSignals;
  const { line, variants } = SHEETS.find(({ id }) => id === cornerId)!;
  const car = fitCarOf(buildCar(CARS.find(({ id }) => id === carId)!, variants[0]!.car));
  const { figures, entry } = fitZone(signals, { car, grip: null });
  expect(entry.kind).toBe(line.kind);
  expect(Math.abs(figures.radiusM!.value / line.radiusM - 1)).toBeLessThan(0.03);
  expect(Math.abs(figures.entryM!.value - line.entryM)).toBeLessThan(2);
  // with a little throttle the slowest point may lie anywhere on the arc: the car is hardly faster where it is said to be
  expect(figures.slowestSpeedMps!.value).toBeCloseTo(drive.slowestMps, 0);
  expect(drive.speedMps(figures.turnInM!.value)).toBeLessThan(drive.slowestMps + 0.25);
  expect(figures.approachSpeedMps!.value).toBeCloseTo(variants[0]!.approachSpeedMps, 0);
  expect(Math.abs((figures.brakingGripShare?.value ?? 1) - 1)).toBeLessThan(0.05);
});
