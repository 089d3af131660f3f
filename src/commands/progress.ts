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
import type { HistoryStore } from '../history/store.ts';
import { cleanText } from '../input/discovery/clean-text.ts';
import { Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import { comparisonText } from '../screens/progress/comparison-text.ts';
import { progressText } from '../screens/progress/progress-text.ts';
import type { Target } from '../target/target.ts';
import type { Command, CommandContext, CommandInput, OptionValue } from './command.ts';
import { driverOption } from './driver-option.ts';
import { GIVEN_TARGET } from './given-target.ts';
import { latestSpread } from './latest-spread.ts';
import { namesText } from './names-text.ts';
import { weeksOption } from './option-value.ts';
import { subjectReps } from './subject-reps.ts';
import { localToday } from './zoned-now.ts';

/** Rows of weeks and days where nobody says how many: half a year of weeks. */
const USUAL_ROWS = 26;

/** What the history says about a driver's consistency over weeks. */
export const command: Command = {
  name: 'progress',
  summary: 'whether the foot is getting better: spread, trend and limits over weeks',
  positionals: '[TARGET|CORNER|FILE]',
  options: {
    weeks: { type: 'string', value: 'N', help: 'show only the last N weeks, this one included' },
    driver: { type: 'string', value: 'NAME', help: 'only this driver' },
    target: GIVEN_TARGET,
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
  const [subject, ...more] = positionals;
  if (more.length > 0)
    throw wrongUsage('progress takes one target or corner', 'Leave out the others.');
  const driver = driverOption(values.driver, 'progress --driver');
  const isComparing = values.all === true;
  if (isComparing && driver !== null)
    throw wrongUsage('--all beside --driver', 'Leave one of them out.');
  const weeks = values.weeks === undefined ? null : weeksOption(values.weeks);
  const asked = { subject: subject ?? null, driver, files: values.target };
  const { isEmpty, all, spreads } = await readAll(context, asked, { today, weeks, isComparing });
  if (values.json === true)
    context.out(
      `${JSON.stringify(isComparing ? comparisonJson(compareDrivers(all)) : progressJson(all, spreads))}\n`,
    );
  else if (isEmpty) context.out('No reps yet: drive some with `ebbline drill`.\n');
  else if (all.length === 0) context.out(`No reps in the last ${weeks} weeks.\n`);
  else if (isComparing) context.out(comparisonText(compareDrivers(all)));
  else
    context.out(
      progressText(
        all,
        weeks === null ? USUAL_ROWS : Number.POSITIVE_INFINITY,
        spreads,
        context.units,
      ),
    );
  return 0;
}

/** What is asked for. */
interface Asked {
  /** Id of a target or a corner, or the path of a target file; null for all. */
  readonly subject: string | null;
  readonly driver: string | null;
  /** Target files that are not in the usual folders. */
  readonly files: OptionValue;
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
  asked: Asked,
  options: WeeksOptions & { readonly isComparing: boolean },
): Promise<Read> {
  const history = openExistingHistory(dataDir);
  if (history === null) return { isEmpty: true, all: [], spreads: [] };
  try {
    if (history.notice !== null) err(`ebbline: ${history.notice}\n`);
    const found = await subjectReps(history, asked.subject, asked.driver, dataDir);
    if (found === null) return nothing(history, asked);
    const all = weeksProgress(allReps(found.columns), options);
    const given = [...found.given, ...(await filesOf(asked, dataDir))];
    const spreads = options.isComparing ? [] : await spreadsOf(history, all, dataDir, given);
    return { isEmpty: false, all, spreads };
  } finally {
    history.close();
  }
}

/** @throws Problem where there are reps, but none of what is asked for */
function nothing(history: HistoryStore, asked: Asked): Read {
  const { repIds, shared } = history.columns({});
  if (repIds.length > 0) throw nothingOf(asked, shared);
  return { isEmpty: true, all: [], spreads: [] };
}

async function filesOf({ files }: Asked, dataDir: string): Promise<readonly Target[]> {
  if (files === undefined) return [];
  return (await import('./given-targets.ts')).givenTargets(files, dataDir);
}

async function spreadsOf(
  history: HistoryStore,
  all: readonly WeeksProgress[],
  dataDir: string,
  given: readonly Target[],
): Promise<LatestSpread[]> {
  const spreads: LatestSpread[] = [];
  for (const series of all) spreads.push(await latestSpread(history, series, dataDir, given));
  return spreads;
}

function progressJson(all: readonly WeeksProgress[], spreads: readonly LatestSpread[]): object {
  const { targets } = weeksJson(all);
  return {
    targets: targets.map((target, i) => ({ ...target, ...latestSpreadJson(spreads[i]!) })),
  };
}

/** There are reps, but none of this driver or target: most likely a slip of the keyboard. */
function nothingOf({ subject, driver }: Asked, shared: RepColumns['shared']): Problem {
  const drivers = [...new Set(shared.map((rep) => rep.driver))];
  if (driver !== null && !drivers.includes(driver)) return unknownName('driver', driver, drivers);
  const own = shared.filter((rep) => driver === null || rep.driver === driver);
  return unknownName('target', subject ?? '', [...new Set(own.map((rep) => rep.targetId))]);
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
