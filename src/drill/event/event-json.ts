import type { CircuitEvent, EventZone } from './circuit-event.ts';

/** An event as one JSON object, in the words of its file. */
export function eventJson(event: CircuitEvent, daysLeft: number): Record<string, unknown> {
  return {
    id: event.id,
    name: event.name,
    advice: event.advice,
    date: event.date,
    days_left: daysLeft,
    zones: event.zones.map(zoneJson),
    sessions: event.sessions.map(({ session, variant, lateCallShare }) => ({
      session,
      variant,
      late_call_share: lateCallShare,
    })),
    brakes_stay_hot: event.brakesStayHot,
  };
}

function zoneJson({ corner, car, variant, toNext }: EventZone): Record<string, unknown> {
  return {
    corner,
    car,
    variant,
    to_next_m: toNext.kind === 'metres' ? toNext.gapM : null,
    to_next_s: toNext.kind === 'seconds' ? toNext.gapS : null,
  };
}
