import { buildCar } from '../../src/car/build-car.ts';
import type { Car } from '../../src/car/car.ts';
import { buildCorner, variantOfSheet } from '../../src/corner/build-corner.ts';
import type { CornerSheet } from '../../src/corner/corner-sheet.ts';
import { liveZone } from '../../src/live/build-live-zone.ts';
import type { LiveControls, LiveZone } from '../../src/live/live-zone.ts';
import { deriveTarget } from '../../src/target/derive/derive-target.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import { CARS, SHEETS } from '../target/derive/bundled-zones.ts';
import { PEDAL_ONLY, pointsOver, recordOf } from './rigs.ts';

/** The zone of a bundled car, or one made of it, in a bundled corner, in the sheet's first variant or a named one. */
export function bundledZone(
  carId: string,
  cornerId: string,
  variant: string | null = null,
  controls: LiveControls = PEDAL_ONLY,
  madeOf: (car: Car) => Car = (car) => car,
): LiveZone {
  const file = CARS.find(({ id }) => id === carId) as (typeof CARS)[number];
  const sheet = SHEETS.find(({ id }) => id === cornerId) as CornerSheet;
  const car = madeOf(buildCar(file, variantOfSheet(sheet, variant).car));
  const derived = deriveTarget(car, buildCorner(sheet, variant));
  return liveZone({ derived, advice: null, controls, call: null });
}

/** The rep of a foot that does what the derived target says, over time. */
export function recordOfTarget({ derived }: LiveZone): RepRecord {
  const { points, durationS } = derived.zone;
  const level = pointsOver(points, (p) => Math.min(1, p.level));
  return recordOf({ brake: (t) => (t < 0 ? 0 : level(t)), endS: durationS + 0.6 });
}
