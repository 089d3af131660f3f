import { localDate } from '../consistency/local-date.ts';
import type { RepMeasure } from '../consistency/rep-measure.ts';
import { weeksJson } from '../consistency/weeks/weeks-json.ts';
import { weeksProgress } from '../consistency/weeks/weeks-progress.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import { openExistingHistory } from '../history/open-history.ts';
import type { RepQuery } from '../history/store.ts';
import { cleanText } from '../input/discovery/clean-text.ts';
import { Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import { progressText } from '../screens/progress/progress-text.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { zonedNow } from './zoned-now.ts';

/** Rows of weeks and days where nobody says how many: half a year of weeks. */
const USUAL_ROWS = 26;

/** What the history says about a driver's consistency over weeks. */
export const command: Command = {
  name: 'progress',
  summary: 'whether the foot is getting better: spread, trend and limits over weeks',
  positionals: '[TARGET]',
  options: {
    weeks: { type: 'string', value: 'N', help: 'show only the last N weeks, this one included' },
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
  const weeks = values.weeks === undefined ? null : weekCount(values.weeks);
  const reps = readReps(context, query);
  const all = weeksProgress(reps ?? [], { today: localDate(now), weeks });
  if (values.json === true) context.out(`${JSON.stringify(weeksJson(all))}\n`);
  else if (reps === null) context.out('No reps yet: drive some with `ebbline drill`.\n');
  else if (all.length === 0) context.out(`No reps in the last ${weeks} weeks.\n`);
  else context.out(progressText(all, weeks === null ? USUAL_ROWS : Number.POSITIVE_INFINITY));
  return 0;
}

/** Null where no rep was ever kept. */
function readReps({ dataDir, err }: CommandContext, query: RepQuery): readonly RepMeasure[] | null {
  const history = openExistingHistory(dataDir);
  if (history === null) return null;
  try {
    if (history.notice !== null) err(`ebbline: ${history.notice}\n`);
    const reps = history.measures(query);
    if (reps.length > 0) return reps;
    if (history.measures({ limit: 1 }).length === 0) return null;
    throw nothingOf(query, history.measures({}));
  } finally {
    history.close();
  }
}

function weekCount(weeks: unknown): number {
  const count = Number(weeks);
  if (!Number.isInteger(count) || count < 1 || count > 5200)
    throw wrongUsage(
      `--weeks ${JSON.stringify(weeks)} is no number of weeks`,
      'Say a whole number from 1 on.',
    );
  return count;
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
