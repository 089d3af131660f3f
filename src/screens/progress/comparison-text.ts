import { REPS_FOR_MEDIAN } from '../../consistency/estimate.ts';
import type {
  ComparedDriver,
  DriverComparison,
  MixedCondition,
} from '../../consistency/weeks/compare-drivers.ts';
import { cleanText } from '../../input/discovery/clean-text.ts';
import { countText, fixed, percentText, signed, tenths } from '../../number-text.ts';
import { fitText } from '../write-text.ts';
import { wrapWords } from './wrap-words.ts';

const COLUMNS = [20, 17, 20, 23] as const;
const LINE = 80;

/** Drivers beside each other, target by target, as lines of at most 80 columns. */
export function comparisonText(all: readonly DriverComparison[]): string {
  const begun = all.filter(({ drivers }) =>
    drivers.some(({ hiddenReps }) => hiddenReps >= REPS_FOR_MEDIAN),
  );
  const lines = [
    ...begun.flatMap((comparison) => [...comparisonLines(comparison, all), '']),
    ...tooFewLines(all.filter((comparison) => !begun.includes(comparison))),
  ];
  return `${[...lines, ...LEGEND.flatMap((line) => wrapWords(line))].join('\n')}\n`;
}

const LEGEND = [
  'Typical error: how far a practice median of hidden reps strays without any change. Trend: of the release error by week.',
  'Spread: of hidden reps, the two weeks four weeks ago and the last two. All in % of full scale; the smaller the steadier.',
  'Every number is of one driver alone. Targets are not compared with each other, and scores not at all.',
];

/** What nobody has driven enough to say anything of, in few lines. */
function tooFewLines(few: readonly DriverComparison[]): string[] {
  if (few.length === 0) return [];
  const reps = new Map<string, number>();
  for (const { targetId, drivers } of few) {
    const most = Math.max(...drivers.map(({ hiddenReps }) => hiddenReps));
    reps.set(targetId, Math.max(most, reps.get(targetId) ?? 0));
  }
  const names = [...reps].map(([name, count]) => `${cleanText(name, 40)} ${count}`);
  return [
    ...wrapWords(`Under ${REPS_FOR_MEDIAN} hidden reps of any driver: ${names.join(', ')}.`),
    '',
  ];
}

function comparisonLines(comparison: DriverComparison, all: readonly DriverComparison[]): string[] {
  const { targetId, scoreVersion, drivers, mixed } = comparison;
  const name = [
    cleanText(targetId, 40),
    ...(hasOthers(comparison, all) ? [`as driven since ${firstDay(drivers)}`] : []),
    ...(scoreVersion === null ? [] : [`score ${scoreVersion}`]),
  ];
  return [
    name.join(', '),
    row(['driver', 'typical error', 'trend a week', 'spread, before and now']),
    ...drivers.flatMap(driverLines),
    ...mixedLines(mixed),
  ];
}

/** A target that was changed stands here once for each of its versions. */
function hasOthers(
  { targetId, targetVersion }: DriverComparison,
  all: readonly DriverComparison[],
): boolean {
  return all.some((one) => one.targetId === targetId && one.targetVersion !== targetVersion);
}

function firstDay(drivers: readonly ComparedDriver[]): string {
  return drivers.map(({ since }) => since).toSorted()[0]!;
}

function driverLines(compared: ComparedDriver): string[] {
  const { progress, conditions, hiddenReps, since, trend, trendOf } = compared;
  const { driver, source, foot, condition, typicalErrorLevel } = progress;
  const { before, now, verdict } = progress.spread.amount;
  const slope = trend.line?.slope ?? 0;
  const how = [
    `${foot} foot`,
    ...(condition === null ? [] : [cleanText(condition, 12)]),
    cleanText(source, 10),
    ...(conditions === null ? [] : [cleanText(conditions.sensor, 10)]),
  ].join(', ');
  const of = trend.verdict === null ? '' : `, trend ${trendOf}`;
  const error = progress.typicalErrorInterval;
  const range =
    error === null
      ? ''
      : `; typical error ${fixed(100 * error.low, 2)} to ${percentText(error.high, 2)} (${Math.round(100 * error.level)} %)`;
  const [own, besideFigures] = nameLines(driver);
  return [
    ...own,
    row([
      besideFigures,
      typicalErrorLevel === null
        ? missing(compared.typicalErrorMissingReps)
        : percentText(typicalErrorLevel, 2),
      trend.verdict === null
        ? missing(compared.trendMissingReps)
        : `${signed(100 * slope, 2)} % ${words(trend.verdict)}`,
      verdict === null
        ? missing(compared.spreadMissingReps)
        : `${tenths(before.deviation!)} to ${percentText(now.deviation!, 1)} ${words(verdict)}`,
    ]),
    ...wrapWords(
      `${how}; ${countText(hiddenReps, 'hidden rep')} since ${since}${of}${range}`,
      78,
    ).map((line) => `  ${line}`),
  ];
}

/** A name that its column does not hold takes a line of its own: names often differ at their end. */
function nameLines(driver: string): readonly [own: readonly string[], beside: string] {
  const name = cleanText(driver, LINE);
  return name.length < COLUMNS[0] ? [[], name] : [[fitText(cleanText(driver, 1024), LINE)], ''];
}

/** Where chance cannot be told from a change. */
function missing(reps: number): string {
  return reps === 0 ? 'not known' : `${countText(reps, 'rep')} missing`;
}

function words(verdict: string): string {
  return verdict === 'no clear change' ? 'unclear' : verdict;
}

function mixedLines(mixed: readonly MixedCondition[]): string[] {
  if (mixed.length === 0) return [];
  const parts = mixed.map(
    ({ name, values }) =>
      `${name} ${values.map((value) => cleanText(value ?? 'none', 12)).join(' and ')}`,
  );
  return wrapWords(`Mixed here: ${parts.join('; ')}. Compare trends rather than sizes.`);
}

function row(cells: readonly string[]): string {
  return cells
    .map((cell, i) => (i === cells.length - 1 ? cell : cell.padEnd(COLUMNS[i]!)))
    .join('')
    .trimEnd();
}
