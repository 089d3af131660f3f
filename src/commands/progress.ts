import { allReps, type RepColumns } from '../consistency/rep-columns.ts';
import { compareDrivers } from '../consistency/weeks/compare-drivers.ts';
import { comparisonJson } from '../consistency/weeks/comparison-json.ts';
import { weeksJson } from '../consistency/weeks/weeks-json.ts';
import {
  type WeeksOptions,
  type WeeksProgress,
  weeksProgress,
} from '../consistency/weeks/weeks-progress.ts';
import { type LatestSpread, latestSpreadJson } from '../drill/diagnosis/spread-curve.ts';
import { openExistingHistory } from '../history/open-history.ts';
import type { HistoryStore, RepQuery } from '../history/store.ts';
import { cleanText } from '../input/discovery/clean-text.ts';
import { Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import { comparisonText } from '../screens/progress/comparison-text.ts';
import { progressText } from '../screens/progress/progress-text.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { driverOption } from './driver-name.ts';
import { namesText } from './names-text.ts';
import { weeksOption } from './option-value.ts';
import { localToday } from './zoned-now.ts';

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
    all: { type: 'boolean', help: 'drivers beside each other: typical error and trend by target' },
    json: { type: 'boolean', help: 'one JSON object instead of tables' },
  },
  examples: [
    'ebbline progress',
    'ebbline progress hairpin --weeks 4 --json',
    'ebbline progress --all',
  ],
  run: async (input, context) => progress(input, context, localToday()),
};

/** `progress` with the local date passed in. */
export async function progress(
  { positionals, values }: CommandInput,
  context: CommandContext,
  today: string,
): Promise<number> {
  const [targetId, ...more] = positionals;
  if (more.length > 0) throw wrongUsage('progress takes one target', 'Leave out the others.');
  const driver = driverOption(values.driver, 'progress --driver');
  const query = {
    ...(targetId === undefined ? {} : { targetId }),
    ...(driver === null ? {} : { driver }),
  };
  const isComparing = values.all === true;
  if (isComparing && driver !== null)
    throw wrongUsage('--all beside --driver', 'Leave one of them out.');
  const weeks = values.weeks === undefined ? null : weeksOption(values.weeks);
  const { isEmpty, all, spreads } = await readAll(context, query, { today, weeks, isComparing });
  if (values.json === true)
    context.out(
      `${JSON.stringify(isComparing ? comparisonJson(compareDrivers(all)) : progressJson(all, spreads))}\n`,
    );
  else if (isEmpty) context.out('No reps yet: drive some with `ebbline drill`.\n');
  else if (all.length === 0) context.out(`No reps in the last ${weeks} weeks.\n`);
  else if (isComparing) context.out(comparisonText(compareDrivers(all)));
  else
    context.out(progressText(all, weeks === null ? USUAL_ROWS : Number.POSITIVE_INFINITY, spreads));
  return 0;
}

interface Read {
  /** No rep was ever kept. */
  readonly isEmpty: boolean;
  readonly all: readonly WeeksProgress[];
  /** One of each series. */
  readonly spreads: readonly LatestSpread[];
}

async function readAll(
  { dataDir, err }: CommandContext,
  query: RepQuery,
  options: WeeksOptions & { readonly isComparing: boolean },
): Promise<Read> {
  const history = openExistingHistory(dataDir);
  if (history === null) return { isEmpty: true, all: [], spreads: [] };
  try {
    if (history.notice !== null) err(`ebbline: ${history.notice}\n`);
    const columns = readColumns(history, query);
    const all = columns === null ? [] : weeksProgress(allReps(columns), options);
    const spreads = options.isComparing ? [] : await spreadsOf(history, all, dataDir);
    return { isEmpty: columns === null, all, spreads };
  } finally {
    history.close();
  }
}

/** Null where no rep was ever kept. */
function readColumns(history: HistoryStore, query: RepQuery): RepColumns | null {
  const columns = history.columns(query);
  if (columns.repIds.length > 0) return columns;
  const all = history.columns({});
  if (all.repIds.length === 0) return null;
  throw nothingOf(query, all.shared);
}

async function spreadsOf(
  history: HistoryStore,
  all: readonly WeeksProgress[],
  dataDir: string,
): Promise<LatestSpread[]> {
  if (all.length === 0) return [];
  // the readers of target files are needed for this picture only
  const { latestSpread } = await import('./latest-spread.ts');
  const spreads: LatestSpread[] = [];
  for (const series of all) spreads.push(await latestSpread(history, series, dataDir));
  return spreads;
}

function progressJson(all: readonly WeeksProgress[], spreads: readonly LatestSpread[]): object {
  const { targets } = weeksJson(all);
  return {
    targets: targets.map((target, i) => ({ ...target, ...latestSpreadJson(spreads[i]!) })),
  };
}

/** There are reps, but none of this driver or target: most likely a slip of the keyboard. */
function nothingOf({ targetId, driver }: RepQuery, shared: RepColumns['shared']): Problem {
  const drivers = [...new Set(shared.map((rep) => rep.driver))];
  if (driver !== undefined && !drivers.includes(driver))
    return unknownName('driver', driver, drivers);
  const own = shared.filter((rep) => driver === undefined || rep.driver === driver);
  return unknownName('target', targetId ?? '', [...new Set(own.map((rep) => rep.targetId))]);
}

function unknownName(what: string, name: string, names: readonly string[]): Problem {
  const near = nearest(name, names);
  const guess = near === null ? '' : `Did you mean ${cleanText(near)}? `;
  return new Problem(`there are no reps of ${what} ${JSON.stringify(name)}`, {
    next: `${guess}There are reps of: ${what === 'driver' ? namesText(names) : names.map((one) => cleanText(one)).join(', ')}.`,
  });
}

function wrongUsage(what: string, next: string): Problem {
  return new Problem(what, { where: 'progress', next, exitCode: 2 });
}
