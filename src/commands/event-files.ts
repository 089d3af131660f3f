import { checkEvent } from '../drill/event/check-event.ts';
import type { CircuitEvent } from '../drill/event/circuit-event.ts';
import type { KnownProfiles } from '../drill/plan/plan-names.ts';
import { knownProfiles } from './plan-files.ts';
import { findProfile, type ProfileKind } from './profile-files.ts';

/** Events: bundled in profiles/events, own ones in `<data-dir>/events`. */
export const EVENT_FILES: ProfileKind<CircuitEvent> = eventFiles(null);

/** The same, with the names in an event checked against what there is. */
export function eventFiles(known: KnownProfiles | null): ProfileKind<CircuitEvent> {
  return {
    noun: 'event',
    folder: 'events',
    check: (text, fileName) => checkEvent(text, fileName, known),
  };
}

/** The event that the user names by id or path, its names checked. @throws Problem as `findProfile` does */
export async function findEvent(idOrPath: string, dataDir: string): Promise<CircuitEvent> {
  return findProfile(eventFiles(await knownProfiles(dataDir)), idOrPath, dataDir);
}
