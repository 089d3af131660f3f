import { idOfFile } from '../../profile/id-of-file.ts';
import type { ProfileReading } from '../../profile/profile-reading.ts';
import { readProfile } from '../../profile/read-profile.ts';
import type { KnownProfiles } from '../plan/plan-names.ts';
import type { CircuitEvent } from './circuit-event.ts';
import type { EventFile } from './event-file.ts';
import { unknownEventNames } from './event-names.ts';
import { eventOfFile } from './event-of-file.ts';
import { brokenEventRules } from './event-rules.ts';
import { EVENT_SCHEMA } from './event-schema.ts';

/**
 * The event in the text of a YAML file, for whoever shows the problems one by one. Throws nothing.
 *
 * @param fileName with or without folders; without them and its ending it becomes the event's id
 * @param known where names are to be checked too; null leaves them to whoever drives the event
 */
export function checkEvent(
  text: string,
  fileName: string,
  known: KnownProfiles | null = null,
): ProfileReading<CircuitEvent> {
  const reading = readProfile<EventFile>(text, EVENT_SCHEMA, (file) => [
    ...brokenEventRules(file),
    ...(known === null ? [] : unknownEventNames(file, known)),
  ]);
  if (reading.kind === 'refused') return reading;
  return { kind: 'read', value: eventOfFile(reading.value, idOfFile(fileName)) };
}
