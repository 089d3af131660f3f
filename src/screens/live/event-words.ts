import type { LiveEvent } from '../../live/live-event.ts';
import type { TextUnits } from '../../unit-text.ts';
import { placeText } from './place-text.ts';

/** What stands for an event on the trace. */
export function eventLetter(event: LiveEvent): string {
  switch (event.kind) {
    case 'lock-up':
      return event.axle === 'front' ? 'F' : 'R';
    case 'anti-lock':
      return 'A';
    case 'downshift':
      return 'D';
    case 'upshift':
      return 'U';
  }
}

/** Where it began. */
export function eventPlaceM(event: LiveEvent): number {
  return 'fromM' in event ? event.fromM : event.atM;
}

/** Where it ended; null while it goes on. */
export function eventEndM(event: LiveEvent): number | null {
  return 'fromM' in event ? event.toM : event.atM;
}

/** The letter, what it is, and where: what grip did before what the gearbox did. */
export function eventWords(
  events: readonly LiveEvent[],
  units: TextUnits = 'metric',
): readonly string[] {
  return [
    ...events.filter((event) => 'fromM' in event).map((event) => gripWords(event, units)),
    ...shiftWords(
      events.filter(({ kind }) => kind === 'downshift'),
      units,
    ),
    ...shiftWords(
      events.filter(({ kind }) => kind === 'upshift'),
      units,
    ),
  ];
}

type GripEvent = Extract<LiveEvent, { fromM: number }>;

function gripWords(event: GripEvent, units: TextUnits): string {
  const name = event.kind === 'lock-up' ? `${event.axle} locked` : `anti-lock ${event.axle}`;
  const from = placeText(event.fromM, units);
  const where = event.toM === null ? `from ${from}` : `${from} to ${placeText(event.toM, units)}`;
  return `${eventLetter(event)} ${name} ${where}`;
}

function shiftWords(events: readonly LiveEvent[], units: TextUnits): readonly string[] {
  const places = events
    .filter((event) => 'atM' in event)
    .map(({ toGear, atM, overRev }) => {
      return `${toGear} at ${placeText(atM, units)}${overRev ? ' (over-rev)' : ''}`;
    });
  const [first] = events;
  if (first === undefined) return [];
  const name = first.kind === 'downshift' ? 'down to' : 'up to';
  return [`${eventLetter(first)} ${name} ${places.join(', ')}`];
}
