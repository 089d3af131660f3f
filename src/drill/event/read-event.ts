import { idOfFile } from '../../profile/id-of-file.ts';
import { type ProfileProblem, problemOfFile } from '../../profile/profile-problem.ts';
import { readProfile } from '../../profile/read-profile.ts';
import type { KnownProfiles } from '../plan/plan-names.ts';
import type { CircuitEvent } from './circuit-event.ts';
import type { EventFile } from './event-file.ts';
import { unknownEventNames } from './event-names.ts';
import { eventOfFile } from './event-of-file.ts';
import { brokenEventRules } from './event-rules.ts';
import { EVENT_SCHEMA } from './event-schema.ts';

/** An event, or everything that is wrong with its file. */
type EventReading =
  | { readonly kind: 'read'; readonly event: CircuitEvent }
  | { readonly kind: 'refused'; readonly problems: readonly ProfileProblem[] };

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
): EventReading {
  const reading = readProfile<EventFile>(text, EVENT_SCHEMA, (file) => [
    ...brokenEventRules(file),
    ...(known === null ? [] : unknownEventNames(file, known)),
  ]);
  if (reading.kind === 'refused') return reading;
  return { kind: 'read', event: eventOfFile(reading.value, idOfFile(fileName)) };
}

/**
 * The event in the text of a YAML file.
 *
 * @throws Problem (exit code 1) that lists every problem of the file with line and column
 */
export function readEvent(text: string, fileName: string): CircuitEvent {
  const reading = checkEvent(text, fileName);
  if (reading.kind === 'refused') throw problemOfFile(fileName, reading.problems);
  return reading.event;
}
