import { buildCar } from '../car/build-car.ts';
import { buildCorner, variantOfSheet } from '../corner/build-corner.ts';
import type { CircuitEvent, EventSession, EventZone } from '../drill/event/circuit-event.ts';
import { roadTimeS } from '../drill/event/road-time.ts';
import { variantIn } from '../drill/event/sessions-of.ts';
import { type DerivedTarget, deriveTarget } from '../target/derive/derive-target.ts';
import { findCorner } from './corner-files.ts';
import { carIn, type ZoneSubject } from './drill-subject.ts';

/** A zone of the lap with everything it names. */
export interface LapZone {
  readonly zone: EventZone;
  readonly subject: Extract<ZoneSubject, { kind: 'car' }>;
  readonly derived: DerivedTarget;
  /** Road from its slowest point to the next zone's brake point, s at lap pace. */
  readonly gapS: number;
}

/**
 * The lap of an event as one of its sessions drives it.
 *
 * @param car that drives all zones in place of the event's; null for none
 * @throws Problem for a name of nothing, or a corner that needs no brake in its car
 */
export async function eventLap(
  { zones }: CircuitEvent,
  session: EventSession,
  car: string | null,
  dataDir: string,
): Promise<readonly LapZone[]> {
  const found = await Promise.all(
    zones.map(async (zone) => {
      const wish = { car: car ?? zone.car, variant: variantIn(zone, session) };
      const subject = await carIn(await findCorner(zone.corner, dataDir), wish, dataDir);
      return { zone, subject, derived: derivedOf(subject) };
    }),
  );
  return found.map((one, i) => ({
    ...one,
    gapS: gapOf(one, found[(i + 1) % found.length]!.derived),
  }));
}

function derivedOf({ car, sheet, variant }: LapZone['subject']): DerivedTarget {
  const built = buildCar(car, variantOfSheet(sheet, variant).car);
  return deriveTarget(built, buildCorner(sheet, variant));
}

function gapOf({ zone, derived }: Omit<LapZone, 'gapS'>, next: DerivedTarget): number {
  const { toNext } = zone;
  if (toNext.kind === 'seconds') return toNext.gapS;
  return roadTimeS(toNext.gapM, derived.keys.slowest.speedMps, next.corner.approachSpeedMps);
}
