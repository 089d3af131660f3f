import type { BrokenRule } from '../../profile/broken-rule.ts';
import type { EventFile } from './event-file.ts';

/** What no schema can say: how the values of one event have to fit each other. Empty for a sound event. */
export function brokenEventRules(file: EventFile): readonly BrokenRule[] {
  return [...dateRules(file), ...carRules(file), ...twiceRules(file), ...sessionRules(file)];
}

/** The pattern lets days through that no calendar has. */
function dateRules({ date }: EventFile): BrokenRule[] {
  const read = new Date(`${date}T00:00:00Z`);
  const isDay = !Number.isNaN(read.getTime()) && read.toISOString().slice(0, 10) === date;
  const next = 'Write year, month and day, for example 2027-04-10.';
  return isDay ? [] : [{ path: ['date'], what: `there is no day ${date}`, next }];
}

function carRules({ car, zones }: EventFile): BrokenRule[] {
  if (car !== undefined) return [];
  const next = 'Add car to the zone, or once to the event.';
  return zones.flatMap((zone, i) =>
    zone.car === undefined ? [{ path: ['zones', i], what: 'the zone has no car', next }] : [],
  );
}

/** A corner lies in one place of the lap. */
function twiceRules({ zones }: EventFile): BrokenRule[] {
  return zones.flatMap(({ corner }, i) => {
    if (zones.findIndex((other) => other.corner === corner) === i) return [];
    const next = 'Take one of them out, or give it a sheet of its own.';
    return [{ path: ['zones', i, 'corner'], what: 'the corner comes twice in the lap', next }];
  });
}

function sessionRules({ sessions }: EventFile): BrokenRule[] {
  const twice = sessions.flatMap(({ session }, i) => {
    if (sessions.findIndex((other) => other.session === session) === i) return [];
    const what = `the session ${session} stands in the list twice`;
    return [{ path: ['sessions', i, 'session'], what, next: 'Take one of them out.' }];
  });
  if (sessions.some(({ session }) => session !== 'out-lap')) return twice;
  const next = 'Add practice, qualifying or race: an out-lap leads to something.';
  return [...twice, { path: ['sessions'], what: 'there is nothing but an out-lap', next }];
}
