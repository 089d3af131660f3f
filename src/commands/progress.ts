import { addDays, mondayOf } from '../consistency/iso-week.ts';
import { localDate } from '../consistency/local-date.ts';
import { progressJson } from '../consistency/progress-json.ts';
import type { RepMeasure } from '../consistency/rep-measure.ts';
import { startOfDay } from '../consistency/start-of-day.ts';
import { targetProgress } from '../consistency/target-progress.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import { openExistingHistory } from '../history/open-history.ts';
import type { RepQuery } from '../history/store.ts';
import { cleanText } from '../input/discovery/clean-text.ts';
import { Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import { progressText } from '../screens/progress-text.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { zonedNow } from './zoned-now.ts';

/** What the history says about a driver's consistency, day by day. */
export const command: Command = {
  name: 'progress',
  summary: 'scores, errors and spread by practice day',
  positionals: '[TARGET]',
  options: {
    weeks: { type: 'string', value: 'N', help: 'only the last N weeks, this one included' },
    driver: { type: 'string', value: 'NAME', help: 'only this driver' },
    json: { type: 'boolean', help: 'one JSON object instead of tables' },
  },
  examples: ['ebbline progress', 'ebbline progress hairpin --weeks 4 --json'],
  run: async (input, context) => progress(input, context, zonedNow()),
};

/** `progress` with the time passed in. */
export function progress(
  { positionals, values }: CommandInput,
  context: CommandContext,
  now: ZonedInstant,
): number {
  const [targetId, ...more] = positionals;
  if (more.length > 0) throw wrongUsage('progress takes one target', 'Leave out the others.');
  const query = {
    ...(targetId === undefined ? {} : { targetId }),
    ...(typeof values.driver === 'string' ? { driver: values.driver } : {}),
  };
  const sinceUtcMs = values.weeks === undefined ? null : weeksAgo(values.weeks, now);
  const reps = readReps(context, query, sinceUtcMs);
  const all = targetProgress(reps ?? []);
  if (values.json === true) context.out(`${JSON.stringify(progressJson(all))}\n`);
  else if (reps === null) context.out('No reps yet: drive some with `ebbline drill`.\n');
  else if (all.length === 0) context.out(`No reps in the last ${values.weeks} weeks.\n`);
  else context.out(progressText(all));
  return 0;
}

/** Null where no rep was ever kept. */
function readReps(
  { dataDir, err }: CommandContext,
  query: RepQuery,
  sinceUtcMs: number | null,
): readonly RepMeasure[] | null {
  const history = openExistingHistory(dataDir);
  if (history === null) return null;
  try {
    if (history.notice !== null) err(`ebbline: ${history.notice}\n`);
    const reps = history.measures(sinceUtcMs === null ? query : { ...query, sinceUtcMs });
    if (reps.length > 0) return reps;
    if (history.measures({ limit: 1 }).length === 0) return null;
    if (history.measures({ ...query, limit: 1 }).length === 0)
      throw nothingOf(query, history.measures({}));
    return [];
  } finally {
    history.close();
  }
}

/** Start of the Monday `weeks - 1` weeks before this week's. */
function weeksAgo(weeks: unknown, now: ZonedInstant): number {
  const count = Number(weeks);
  if (!Number.isInteger(count) || count < 1 || count > 5200)
    throw wrongUsage(
      `--weeks ${JSON.stringify(weeks)} is no number of weeks`,
      'Say a whole number from 1 on.',
    );
  return startOfDay(addDays(mondayOf(localDate(now)), -7 * (count - 1)), now.zone);
}

/** There are reps, but none of this driver or target: most likely a slip of the keyboard. */
function nothingOf({ targetId, driver }: RepQuery, reps: readonly RepMeasure[]): Problem {
  const drivers = [...new Set(reps.map((rep) => rep.driver))];
  if (driver !== undefined && !drivers.includes(driver))
    return unknownName('driver', driver, drivers);
  const own = reps.filter((rep) => driver === undefined || rep.driver === driver);
  return unknownName('target', targetId ?? '', [...new Set(own.map((rep) => rep.targetId))]);
}

function unknownName(what: string, name: string, names: readonly string[]): Problem {
  const near = nearest(name, names);
  const guess = near === null ? '' : `Did you mean ${cleanText(near)}? `;
  return new Problem(`there are no reps of ${what} ${JSON.stringify(name)}`, {
    next: `${guess}There are reps of: ${names.map((one) => cleanText(one)).join(', ')}.`,
  });
}

function wrongUsage(what: string, next: string): Problem {
  return new Problem(what, { where: 'progress', next, exitCode: 2 });
}
