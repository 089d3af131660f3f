import type { CircuitEvent, EventSession, EventZone } from './circuit-event.ts';
import type { EventFile, EventSessionFile, EventZoneFile } from './event-file.ts';

/** The event that a file describes which the schema and the rules let through. */
export function eventOfFile(file: EventFile, id: string): CircuitEvent {
  return {
    id,
    name: file.name,
    advice: file.advice ?? null,
    date: file.date,
    zones: file.zones.map((zone) => zoneOfFile(zone, file)),
    sessions: file.sessions.map((session) => sessionOfFile(session, file)),
    brakesStayHot: file.brakes_stay_hot ?? false,
  };
}

function zoneOfFile(
  { corner, car, variant, to_next_s: gapS, to_next_m: gapM }: EventZoneFile,
  event: EventFile,
): EventZone {
  return {
    corner,
    car: car ?? event.car!,
    variant: variant ?? null,
    toNext: gapS === undefined ? { kind: 'metres', gapM: gapM! } : { kind: 'seconds', gapS },
  };
}

function sessionOfFile(
  { session, variant, late_call_share: share }: EventSessionFile,
  event: EventFile,
): EventSession {
  return {
    session,
    variant: variant ?? null,
    lateCallShare: share ?? event.late_call_share ?? 0,
  };
}
