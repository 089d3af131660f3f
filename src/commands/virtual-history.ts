import { addDays } from '../consistency/iso-week.ts';
import { localDate } from '../consistency/local-date.ts';
import { startOfDay } from '../consistency/start-of-day.ts';
import { type ZonedInstant, zonedInstant } from '../consistency/zoned-instant.ts';
import { openHistory } from '../history/open-history.ts';
import type { HistoryStore } from '../history/store.ts';
import { DRIVER_NAMES, type DriverName } from '../input/virtual/driver-preset.ts';
import { type InventedCalendar, inventedCalendar } from '../input/virtual/invented-practices.ts';
import { Problem } from '../problem.ts';
import type { Command, CommandContext, CommandInput, OptionValue } from './command.ts';
import { type InventedHistory, inventHistory } from './invent-history.ts';
import { inventedProgramme } from './invented-programme.ts';
import { inventedSummary, inventedSummaryText } from './invented-summary.ts';
import { misuseOf } from './misuse-of.ts';
import { notPossible, textOption, wholeOption } from './option-value.ts';
import { type ProgressOutput, STDERR_PROGRESS } from './progress-line.ts';

const ZONE = 'Europe/Berlin';

/** Writes an invented history, to try everything on. */
export const command: Command = {
  name: 'virtual history',
  summary: 'write an invented history through the real drill, to try everything on',
  positionals: '',
  options: {
    weeks: { type: 'string', value: 'N', help: 'how many weeks (default 10)' },
    seed: { type: 'string', value: 'N', help: 'of all that is by chance (default 1)' },
    target: {
      type: 'string',
      value: 'T',
      help: 'drive only this target (default: the hairpin, another target, a corner, a plan)',
    },
    ability: {
      type: 'string',
      value: DRIVER_NAMES.join('|'),
      help: 'of the driver (default club)',
    },
    from: {
      type: 'string',
      value: 'DATE',
      help: 'a day of the first week, instead of --to',
    },
    to: {
      type: 'string',
      value: 'DATE',
      help: 'last day (default today, up to now); with it the same seed gives the same history',
    },
    json: { type: 'boolean', help: 'one JSON object instead of lines' },
  },
  examples: [
    'ebbline virtual history --data-dir ./invented',
    'ebbline virtual history --weeks 10 --seed 1 --to 2026-11-25 --data-dir ./invented',
  ],
  run: async (input, context) => {
    const stop = { asked: false };
    const now = zonedInstant(Date.now(), ZONE);
    const onInterrupt = (): void => {
      stop.asked = true;
    };
    process.once('SIGINT', onInterrupt);
    try {
      return await virtualHistory(input, context, { output: STDERR_PROGRESS, now }, stop);
    } finally {
      process.off('SIGINT', onInterrupt);
    }
  },
};

/** `virtual history` with its output, the time passed in, and a switch that ends it after the practice under way. */
export async function virtualHistory(
  { positionals, values }: CommandInput,
  context: CommandContext,
  { output, now }: { readonly output: ProgressOutput; readonly now: ZonedInstant },
  stop: { readonly asked: boolean },
): Promise<number> {
  if (positionals.length > 0)
    throw misuseOf('virtual history')('it takes no names', 'Leave them out.');
  if (typeof values['data-dir'] !== 'string')
    throw misuseOf('virtual history')(
      'no folder named',
      'Name a new one with --data-dir: nothing invented goes into yours.',
    );
  const weeks = wholeOption('--weeks', values.weeks ?? '10', 1, 520);
  const seed = wholeOption('--seed', values.seed ?? '1', 0, 2 ** 31 - 1);
  const preset = abilityOf(values.ability);
  const span = spanOf(values, weeks, now);
  const programme = await inventedProgramme(textOption(values.target), context.dataDir);
  const isMixed = values.target === undefined;
  const calendar = upTo(inventedCalendar(weeks, seed, span.from, ZONE, isMixed), span.untilUtcMs);
  const store = openHistory(context.dataDir);
  let done: InventedHistory;
  try {
    refuseOldReps(store, context.dataDir);
    done = await inventHistory(store, calendar, { preset, programme }, output, stop);
  } finally {
    store.close();
  }
  const told = inventedSummary(calendar, done, stop.asked);
  context.out(
    values.json === true ? `${JSON.stringify(told)}\n` : inventedSummaryText(told, context.dataDir),
  );
  return stop.asked ? 130 : 0;
}

/** Nobody has practised in the future. */
function upTo(calendar: InventedCalendar, untilUtcMs: number): InventedCalendar {
  const practices = calendar.practices.filter(({ startedAt }) => startedAt.utcMs < untilUtcMs);
  return { ...calendar, practices };
}

function refuseOldReps(store: HistoryStore, dataDir: string): void {
  if (store.columns({ limit: 1 }).repIds.length === 0) return;
  throw new Problem('there are reps already', {
    where: dataDir,
    next: 'They were left alone. Name a folder without a history with --data-dir.',
  });
}

function abilityOf(value: OptionValue): DriverName {
  const name = DRIVER_NAMES.find((known) => known === (value ?? 'club'));
  if (name !== undefined) return name;
  throw notPossible('--ability', JSON.stringify(value), `Say ${DRIVER_NAMES.join(', ')}.`);
}

/** From which day on practices are planned, and before which instant they have to begin. */
function spanOf(
  { from, to }: CommandInput['values'],
  weeks: number,
  now: ZonedInstant,
): { readonly from: string; readonly untilUtcMs: number } {
  if (from !== undefined && to !== undefined)
    throw notPossible('--to', '--from beside --to', 'Say one of them and --weeks.');
  if (from !== undefined)
    return { from: dayOf('--from', from), untilUtcMs: Number.POSITIVE_INFINITY };
  const last = to === undefined ? localDate(now) : dayOf('--to', to);
  const untilUtcMs = to === undefined ? now.utcMs : startOfDay(addDays(last, 1), ZONE);
  return { from: addDays(last, -7 * (weeks - 1)), untilUtcMs };
}

function dayOf(option: string, value: OptionValue): string {
  const day = textOption(value) ?? '';
  const midnight = Date.parse(`${day}T00:00:00Z`);
  const isDay = /^\d{4}-\d{2}-\d{2}$/.test(day) && !Number.isNaN(midnight);
  if (isDay && localDate({ utcMs: midnight, offsetMin: 0 }) === day) return day;
  throw notPossible(option, JSON.stringify(day), 'Say a day like 2026-11-25.');
}
