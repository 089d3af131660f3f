import type { GearSchedule } from '../target/derive/zone-model.ts';
import type { LiveRun } from './live-run.ts';

/** The gear of every place as the zone was really driven. */
export function drivenGears({ zone, end }: LiveRun): GearSchedule {
  const shifts = end.events.flatMap((event) =>
    event.kind === 'downshift' || event.kind === 'upshift'
      ? [{ fromM: event.atM, gear: event.toGear }]
      : [],
  );
  return [{ fromM: Number.NEGATIVE_INFINITY, gear: zone.corner.gears.approach }, ...shifts];
}
