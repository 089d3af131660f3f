import { Problem } from '../../problem.ts';
import type { CircuitEvent, EventSession, EventZone } from './circuit-event.ts';

/**
 * The session that is asked for.
 *
 * @param name null for the first that is no out-lap
 * @throws Problem (exit code 2) for a session that the event does not have
 */
export function sessionOf(
  { name: event, sessions }: CircuitEvent,
  name: string | null,
): EventSession {
  const found = sessions.find(({ session }) =>
    name === null ? session !== 'out-lap' : session === name,
  );
  if (found !== undefined) return found;
  throw new Problem(`${event} has no session ${JSON.stringify(name)}`, {
    where: '--session',
    next: `Say one of: ${sessions.map(({ session }) => session).join(', ')}.`,
    exitCode: 2,
  });
}

/** How the first lap of a day is driven: as the event's out-lap, or else as the session that follows it. */
export function outLapOf({ sessions }: CircuitEvent, following: EventSession): EventSession {
  return sessions.find(({ session }) => session === 'out-lap') ?? following;
}

/** The variant that a zone is driven in; null for the sheet's first. */
export function variantIn(zone: EventZone, session: EventSession): string | null {
  return zone.variant ?? session.variant;
}
