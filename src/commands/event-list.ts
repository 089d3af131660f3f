import { daysBetween } from '../consistency/days-between.ts';
import { localDate } from '../consistency/local-date.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import type { CircuitEvent } from '../drill/event/circuit-event.ts';
import { eventJson } from '../drill/event/event-json.ts';
import { daysLeftText } from '../drill/event/event-words.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { EVENT_FILES } from './event-files.ts';
import { type ProfileList, printProfileList } from './list-profiles.ts';
import { zonedNow } from './zoned-now.ts';

/** Lists the events that can be named by id. */
export const command: Command = {
  name: 'event list',
  summary: 'list the events that can be named by id, with the days left',
  positionals: '',
  options: { json: { type: 'boolean', help: 'one JSON object instead of a table' } },
  examples: ['ebbline event list', 'ebbline event list --json'],
  run: (input, context) => eventList(input, context, zonedNow()),
};

/** `event list` with the time passed in. */
export function eventList(
  input: CommandInput,
  context: CommandContext,
  now: ZonedInstant,
): Promise<number> {
  const today = localDate(now);
  const list: ProfileList<CircuitEvent> = {
    heads: ['id', 'name', 'date', '', 'zones'],
    cells: ({ id, value: { name, date, zones } }) => [
      id,
      name,
      date,
      daysLeftText(daysBetween(today, date)),
      String(zones.length),
    ],
    json: ({ value }) => eventJson(value, daysBetween(today, value.date)),
  };
  return printProfileList(EVENT_FILES, list, input, context);
}
