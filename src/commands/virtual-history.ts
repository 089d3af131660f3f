import { localDate } from '../consistency/local-date.ts';
import { openHistory } from '../history/open-history.ts';
import type { HistoryStore } from '../history/store.ts';
import { DRIVER_NAMES, type DriverName } from '../input/virtual/driver-preset.ts';
import {
  type InventedCalendar,
  type InventedPractice,
  inventedCalendar,
} from '../input/virtual/invented-practices.ts';
import { Problem } from '../problem.ts';
import { overTime } from '../target/over-time.ts';
import type { Target } from '../target/target.ts';
import type { Command, CommandContext, CommandInput, OptionValue } from './command.ts';
import { inventPractice } from './invent-practice.ts';
import { ProgressLine, type ProgressOutput, STDERR_PROGRESS } from './progress-line.ts';
import { findTarget } from './target-files.ts';

/** A fixed day, so that a seed says everything; ten weeks from it cross a change of the clocks. */
const FIRST_DAY = '2026-02-02';
const ZONE = 'Europe/Berlin';
/** Five first-of-day reps and two blocks of ten. */
const USUAL_REPS = 25;
/** On new pedals a driver is no better than after so many reps; invented. */
const LEFT_ON_NEW_PEDALS = 40;

/** Writes an invented history, to try everything on. */
export const command: Command = {
  name: 'virtual history',
  summary: 'write an invented history through the real drill, to try everything on',
  positionals: '',
  options: {
    weeks: { type: 'string', value: 'N', help: 'how many weeks (default 10)' },
    seed: { type: 'string', value: 'N', help: 'the same seed gives the same history (default 1)' },
    target: { type: 'string', value: 'T', help: 'target or target file (default hairpin)' },
    ability: {
      type: 'string',
      value: DRIVER_NAMES.join('|'),
      help: 'of the driver (default club)',
    },
    from: {
      type: 'string',
      value: 'DATE',
      help: `a day of the first week (default ${FIRST_DAY}); \`progress\` looks back from today`,
    },
    json: { type: 'boolean', help: 'one JSON object instead of lines' },
  },
  examples: ['ebbline virtual history --weeks 10 --seed 1 --data-dir ./invented'],
  run: async (input, context) => {
    const stop = { asked: false };
    const onInterrupt = (): void => {
      stop.asked = true;
    };
    process.once('SIGINT', onInterrupt);
    try {
      return await virtualHistory(input, context, STDERR_PROGRESS, stop);
    } finally {
      process.off('SIGINT', onInterrupt);
    }
  },
};

/** `virtual history` with its output and a switch that ends it after the practice under way. */
export async function virtualHistory(
  { positionals, values }: CommandInput,
  context: CommandContext,
  output: ProgressOutput,
  stop: { readonly asked: boolean },
): Promise<number> {
  if (positionals.length > 0)
    throw wrong('virtual history', 'it takes no names', 'Leave them out.');
  if (typeof values['data-dir'] !== 'string')
    throw wrong(
      '--data-dir',
      'no folder named',
      'Name a new one: nothing invented goes into yours.',
    );
  const weeks = whole('--weeks', values.weeks ?? '10', 1, 520);
  const seed = whole('--seed', values.seed ?? '1', 0, 2 ** 31 - 1);
  const preset = abilityOf(values.ability);
  const target = overTime(await findTarget(textOf(values.target) ?? 'hairpin', context.dataDir));
  const calendar = inventedCalendar(weeks, seed, dayOf(values.from), ZONE);
  const store = openHistory(context.dataDir);
  let done: Invented;
  try {
    refuseOldReps(store, context.dataDir);
    done = await invent(store, calendar, preset, target, output, stop);
  } finally {
    store.close();
  }
  const told = summaryOf(calendar, done, stop.asked);
  context.out(values.json === true ? `${JSON.stringify(told)}\n` : textOfSummary(told, context));
  return stop.asked ? 130 : 0;
}

interface Invented {
  readonly reps: number;
  readonly practices: readonly InventedPractice[];
}

async function invent(
  store: HistoryStore,
  { practices, pedalWeek }: InventedCalendar,
  preset: DriverName,
  target: Target,
  output: ProgressOutput,
  stop: { readonly asked: boolean },
): Promise<Invented> {
  const line = new ProgressLine(output, 'reps', USUAL_REPS * practices.length);
  let written = 0;
  let practised = 0;
  const driven: InventedPractice[] = [];
  for (const [i, practice] of practices.entries()) {
    if (stop.asked) break;
    const isOnNewPedals = practice.week === pedalWeek && practices[i - 1]?.week !== pedalWeek;
    if (isOnNewPedals) practised = Math.min(practised, LEFT_ON_NEW_PEDALS);
    const known = { reps: practised, targets: practised > 0 ? [target] : [] };
    practised += await inventPractice(store, practice, { preset, practised: known }, target, () =>
      line.show(++written),
    );
    driven.push(practice);
  }
  line.end();
  return { reps: written, practices: driven };
}

interface Summary {
  readonly practices: number;
  readonly reps: number;
  readonly first_day: string | null;
  readonly last_day: string | null;
  readonly missed_week: number | null;
  readonly pedal_change_week: number | null;
  readonly interrupted: boolean;
}

/** Weeks count from 1. */
function summaryOf(
  { missedWeek, pedalWeek }: InventedCalendar,
  { reps, practices }: Invented,
  interrupted: boolean,
): Summary {
  const [first, last] = [practices[0], practices.at(-1)];
  const reached = (week: number | null): number | null =>
    week === null || week > (last?.week ?? -1) ? null : week + 1;
  return {
    practices: practices.length,
    reps,
    first_day: first === undefined ? null : localDate(first.startedAt),
    last_day: last === undefined ? null : localDate(last.startedAt),
    missed_week: reached(missedWeek),
    pedal_change_week: reached(pedalWeek),
    interrupted,
  };
}

function textOfSummary(told: Summary, { dataDir }: CommandContext): string {
  const lines = [
    told.reps === 0
      ? 'Nothing was written.'
      : `${told.reps} reps of ${told.practices} practices from ${told.first_day} to ${told.last_day}, all invented.`,
    ...(told.missed_week === null ? [] : [`No practice in week ${told.missed_week}.`]),
    ...(told.pedal_change_week === null
      ? []
      : [`New pedals from week ${told.pedal_change_week} on.`]),
    ...(told.interrupted ? ['Interrupted: what is written is whole, the rest is missing.'] : []),
    `Look at it with \`ebbline progress --data-dir ${dataDir}\`.`,
  ];
  return `${lines.join('\n')}\n`;
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
  throw wrong('--ability', JSON.stringify(value), `Say ${DRIVER_NAMES.join(', ')}.`);
}

function textOf(value: OptionValue): string | null {
  return typeof value === 'string' ? value : null;
}

function dayOf(value: OptionValue): string {
  const day = textOf(value) ?? FIRST_DAY;
  const midnight = Date.parse(`${day}T00:00:00Z`);
  const isDay = /^\d{4}-\d{2}-\d{2}$/.test(day) && !Number.isNaN(midnight);
  if (isDay && localDate({ utcMs: midnight, offsetMin: 0 }) === day) return day;
  throw wrong('--from', JSON.stringify(day), `Say a day like ${FIRST_DAY}.`);
}

function whole(option: string, value: OptionValue, least: number, most: number): number {
  const number = Number(value);
  if (/^\d+$/.test(String(value)) && number >= least && number <= most) return number;
  throw wrong(option, JSON.stringify(value), `Say a whole number from ${least} to ${most}.`);
}

function wrong(where: string, found: string, next: string): Problem {
  return new Problem(`${found} is not possible here`, { where, next, exitCode: 2 });
}
