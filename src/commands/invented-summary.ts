import { localDate } from '../consistency/local-date.ts';
import type { InventedCalendar } from '../input/virtual/invented-practices.ts';
import type { InventedHistory } from './invent-history.ts';

/** What `virtual history` tells. */
interface InventedSummary {
  readonly practices: number;
  readonly reps: number;
  /** By what was driven. */
  readonly reps_of: Readonly<Record<string, number>>;
  readonly first_day: string | null;
  readonly last_day: string | null;
  readonly missed_week: number | null;
  readonly pedal_change_week: number | null;
  readonly interrupted: boolean;
}

/** Weeks count from 1. */
export function inventedSummary(
  { missedWeek, pedalWeek }: InventedCalendar,
  { reps, practices, tally }: InventedHistory,
  interrupted: boolean,
): InventedSummary {
  const [first, last] = [practices[0], practices.at(-1)];
  const reached = (week: number | null): number | null =>
    week === null || week > (last?.week ?? -1) ? null : week + 1;
  return {
    practices: practices.length,
    reps,
    reps_of: Object.fromEntries(tally),
    first_day: first === undefined ? null : localDate(first.startedAt),
    last_day: last === undefined ? null : localDate(last.startedAt),
    missed_week: reached(missedWeek),
    pedal_change_week: reached(pedalWeek),
    interrupted,
  };
}

export function inventedSummaryText(told: InventedSummary, dataDir: string): string {
  const lines = [
    told.reps === 0
      ? 'Nothing was written.'
      : `${told.reps} reps of ${told.practices} ${told.practices === 1 ? 'practice' : 'practices'} from ${told.first_day} to ${told.last_day}, all invented.`,
    ...reasonsOf(told),
    ...(told.missed_week === null ? [] : [`No practice in week ${told.missed_week}.`]),
    ...(told.pedal_change_week === null
      ? []
      : [`New pedals from week ${told.pedal_change_week} on.`]),
    ...(told.interrupted
      ? [
          'Interrupted: what is written is whole, the rest is missing. For all of it start again with a new folder.',
        ]
      : []),
    `Look at it with \`ebbline progress --data-dir ${dataDir}\`.`,
  ];
  return `${lines.join('\n')}\n`;
}

/** How many reps of what, where it was more than one thing. */
function reasonsOf({ reps_of }: InventedSummary): string[] {
  const parts = Object.entries(reps_of).map(([name, reps]) => `${reps} of ${name}`);
  return parts.length < 2 ? [] : [`${parts.join(', ')}.`];
}
