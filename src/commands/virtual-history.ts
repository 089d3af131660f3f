import { addDays } from '../consistency/iso-week.ts';
import { localDate } from '../consistency/local-date.ts';
import { startOfDay } from '../consistency/start-of-day.ts';
import { type ZonedInstant, zonedInstant } from '../consistency/zoned-instant.ts';
import { openHistory } from '../history/open-history.ts';
import type { HistoryStore } from '../history/store.ts';
import { DRIVER_NAMES, type DriverName } from '../input/virtual/driver-preset.ts';
import {
  type InventedCalendar,
  type InventedPractice,
  inventedCalendar,
} from '../input/virtual/invented-practices.ts';
import { Problem } from '../problem.ts';
import type { Target } from '../target/target.ts';
import type { Command, CommandContext, CommandInput, OptionValue } from './command.ts';
import { inventPractice } from './invent-practice.ts';
import {
  type InventedProgramme,
  type InventedSubject,
  inventedProgramme,
} from './invented-programme.ts';
import { ProgressLine, type ProgressOutput, STDERR_PROGRESS } from './progress-line.ts';

const ZONE = 'Europe/Berlin';
/** Five first-of-day reps before the blocks. */
const FIRST_REPS = 5;
/** On new pedals a driver is no better than after so many reps; invented. */
const LEFT_ON_NEW_PEDALS = 40;

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
  const span = spanOf(values, weeks, now);
  const programme = await inventedProgramme(textOf(values.target), context.dataDir);
  const isMixed = values.target === undefined;
  const calendar = upTo(inventedCalendar(weeks, seed, span.from, ZONE, isMixed), span.untilUtcMs);
  const store = openHistory(context.dataDir);
  let done: Invented;
  try {
    refuseOldReps(store, context.dataDir);
    done = await invent(store, calendar, { preset, programme }, output, stop);
  } finally {
    store.close();
  }
  const told = summaryOf(calendar, done, stop.asked);
  context.out(values.json === true ? `${JSON.stringify(told)}\n` : textOfSummary(told, context));
  return stop.asked ? 130 : 0;
}

interface Invented {
  readonly reps: number;
  /** By what was driven. */
  readonly tally: ReadonlyMap<string, number>;
  readonly practices: readonly InventedPractice[];
}

async function invent(
  store: HistoryStore,
  { practices, pedalWeek }: InventedCalendar,
  { preset, programme }: { readonly preset: DriverName; readonly programme: InventedProgramme },
  output: ProgressOutput,
  stop: { readonly asked: boolean },
): Promise<Invented> {
  const subjectOf = ({ kind }: InventedPractice): InventedSubject =>
    programme[kind] ?? programme.usual;
  const expected = practices.reduce(
    (sum, practice) => sum + repsOf(practice, subjectOf(practice)),
    0,
  );
  const line = new ProgressLine(output, 'reps', expected);
  let written = 0;
  const skills = new Map<string, number>();
  const tally = new Map<string, number>();
  const driven: InventedPractice[] = [];
  for (const [i, practice] of practices.entries()) {
    if (stop.asked) break;
    const isOnNewPedals = practice.week === pedalWeek && practices[i - 1]?.week !== pedalWeek;
    if (isOnNewPedals)
      for (const [skill, reps] of skills) skills.set(skill, Math.min(reps, LEFT_ON_NEW_PEDALS));
    const subject = subjectOf(practice);
    // a plan's practice is one of the usual target, too
    const skill = (subject.plan === null ? subject : programme.usual).name;
    const before = skills.get(skill) ?? 0;
    const known = { reps: before, targets: before > 0 ? targetsOf(programme) : [] };
    const reps = await inventPractice(store, practice, { preset, practised: known }, subject, () =>
      line.show(++written),
    );
    skills.set(skill, before + reps);
    tally.set(subject.name, (tally.get(subject.name) ?? 0) + reps);
    driven.push(practice);
  }
  line.end();
  return { reps: written, practices: driven, tally };
}

function repsOf({ kind }: InventedPractice, { blocks, reps }: InventedSubject): number {
  if (kind === 'plan') return reps;
  return blocks * reps + (kind === 'usual' ? FIRST_REPS : 0);
}

/** Targets over time that the driver knows by now; those of the live car are learned each time. */
function targetsOf(programme: InventedProgramme): Target[] {
  return [programme.usual, programme['other target']].flatMap((subject) =>
    subject === undefined ? [] : [subject.target],
  );
}

/** Nobody has practised in the future. */
function upTo(calendar: InventedCalendar, untilUtcMs: number): InventedCalendar {
  const practices = calendar.practices.filter(({ startedAt }) => startedAt.utcMs < untilUtcMs);
  return { ...calendar, practices };
}

interface Summary {
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
function summaryOf(
  { missedWeek, pedalWeek }: InventedCalendar,
  { reps, practices, tally }: Invented,
  interrupted: boolean,
): Summary {
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

function textOfSummary(told: Summary, { dataDir }: CommandContext): string {
  const lines = [
    told.reps === 0
      ? 'Nothing was written.'
      : `${told.reps} reps of ${told.practices} practices from ${told.first_day} to ${told.last_day}, all invented.`,
    ...reasonsOf(told),
    ...(told.missed_week === null ? [] : [`No practice in week ${told.missed_week}.`]),
    ...(told.pedal_change_week === null
      ? []
      : [`New pedals from week ${told.pedal_change_week} on.`]),
    ...(told.interrupted ? ['Interrupted: what is written is whole, the rest is missing.'] : []),
    `Look at it with \`ebbline progress --data-dir ${dataDir}\`.`,
  ];
  return `${lines.join('\n')}\n`;
}

/** How many reps of what, where it was more than one thing. */
function reasonsOf({ reps_of }: Summary): string[] {
  const parts = Object.entries(reps_of).map(([name, reps]) => `${reps} of ${name}`);
  return parts.length < 2 ? [] : [`${parts.join(', ')}.`];
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

/** From which day on practices are planned, and before which instant they have to begin. */
function spanOf(
  { from, to }: CommandInput['values'],
  weeks: number,
  now: ZonedInstant,
): { readonly from: string; readonly untilUtcMs: number } {
  if (from !== undefined && to !== undefined)
    throw wrong('--to', '--from beside --to', 'Say one of them and --weeks.');
  if (from !== undefined)
    return { from: dayOf('--from', from), untilUtcMs: Number.POSITIVE_INFINITY };
  const last = to === undefined ? localDate(now) : dayOf('--to', to);
  const untilUtcMs = to === undefined ? now.utcMs : startOfDay(addDays(last, 1), ZONE);
  return { from: addDays(last, -7 * (weeks - 1)), untilUtcMs };
}

function dayOf(option: string, value: OptionValue): string {
  const day = textOf(value) ?? '';
  const midnight = Date.parse(`${day}T00:00:00Z`);
  const isDay = /^\d{4}-\d{2}-\d{2}$/.test(day) && !Number.isNaN(midnight);
  if (isDay && localDate({ utcMs: midnight, offsetMin: 0 }) === day) return day;
  throw wrong(option, JSON.stringify(day), 'Say a day like 2026-11-25.');
}

function whole(option: string, value: OptionValue, least: number, most: number): number {
  const number = Number(value);
  if (/^\d+$/.test(String(value)) && number >= least && number <= most) return number;
  throw wrong(option, JSON.stringify(value), `Say a whole number from ${least} to ${most}.`);
}

function wrong(where: string, found: string, next: string): Problem {
  return new Problem(`${found} is not possible here`, { where, next, exitCode: 2 });
}
