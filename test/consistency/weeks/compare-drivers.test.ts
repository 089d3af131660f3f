import { expect, test } from 'vitest';
import type { RepMeasure } from '../../../src/consistency/rep-measure.ts';
import {
  type ComparedDriver,
  compareDrivers,
  type DriverComparison,
} from '../../../src/consistency/weeks/compare-drivers.ts';
import { weeksProgress } from '../../../src/consistency/weeks/weeks-progress.ts';
import { seededRandom } from '../../../src/drill/seeded-random.ts';
import { comparisonText } from '../../../src/screens/progress/comparison-text.ts';
import { inventedWeeks } from '../invented-weeks.ts';
import { aMeasure, CONDITIONS, repsOf, someNumbers, times } from '../rep-measures.ts';

const TODAY = '2026-11-25';

const compared = (reps: readonly RepMeasure[]): DriverComparison[] =>
  compareDrivers(weeksProgress(repsOf(reps), { today: TODAY, weeks: null }));

/** Ten weeks of a driver; practices of two drivers never share a number. */
const weeksOf = (driver: string, seed: number, factor: number): RepMeasure[] =>
  inventedWeeks(10, seededRandom(seed), { factor }).map((rep) => ({
    ...rep,
    driver,
    practiceId: rep.practiceId + 1000 * seed,
  }));

const inTime = (reps: readonly RepMeasure[]): RepMeasure[] =>
  reps.toSorted((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));

test('nothing is pooled: beside others every driver has just the numbers that they have alone', () => {
  const own = [weeksOf('Kim', 1, 0.4), weeksOf('Bo', 2, 1.5), weeksOf('Åsa', 3, 1)];
  const [together, ...more] = compared(inTime(own.flat()));
  expect(more).toEqual([]);
  const alone = own.map((reps) => compared(reps)[0]!.drivers[0]!);
  const byName = new Map(alone.map((one) => [one.progress.driver, one]));
  expect(together!.drivers.map(({ progress }) => progress.driver)).toEqual(['Bo', 'Kim', 'Åsa']);
  for (const one of together!.drivers) expect(one).toEqual(byName.get(one.progress.driver));
  // and they do differ, so that a mean of them would show
  expect(new Set(alone.map(({ progress }) => progress.typicalErrorLevel)).size).toBe(3);
  expect(byName.get('Kim')!.trend.verdict).toBe('improving');
});

test('the score is in no comparison', () => {
  const reps = weeksOf('Kim', 1, 0.4);
  const other = reps.map((rep) => ({
    ...rep,
    numbers: rep.numbers && { ...rep.numbers, score: 100 - rep.numbers.score },
  }));
  expect(comparisonText(compared(other))).toBe(comparisonText(compared(reps)));
});

test('another target, another version of it and another score version stand apart', () => {
  const version = (targetVersion: string, scoreVersion: number): RepMeasure['conditions'] => ({
    ...CONDITIONS,
    targetVersion,
    scoreVersion,
  });
  const found = compared([
    aMeasure({ driver: 'A', conditions: version('v1', 1) }),
    aMeasure({ driver: 'B', conditions: version('v2', 1) }),
    aMeasure({ driver: 'C', conditions: version('v2', 1) }),
    aMeasure({ driver: 'D', conditions: version('v2', 2) }),
    aMeasure({ driver: 'E', targetId: 'bend', conditions: version('v1', 1) }),
  ]);
  const names = found.map(({ targetId, targetVersion, scoreVersion, drivers }) => [
    targetId,
    targetVersion,
    scoreVersion,
    drivers.map(({ progress }) => progress.driver).join(),
  ]);
  expect(names).toEqual([
    ['bend', 'v1', 1, 'E'],
    ['hairpin', 'v1', 1, 'A'],
    ['hairpin', 'v2', 1, 'B,C'],
    ['hairpin', 'v2', 2, 'D'],
  ]);
});

/** Practices of so many hidden reps on the days before today. */
const practices = (counts: readonly number[]): RepMeasure[] =>
  counts.flatMap((count, i) =>
    times(count, (rep) =>
      aMeasure({
        practiceId: i + 1,
        day: `2026-11-${String(20 + i)}`,
        feedback: 'hidden',
        numbers: someNumbers({
          releaseErrorLevel: 0.04 + 0.01 * i * i,
          averageErrorLevel: 0.001 * rep,
        }),
      }),
    ),
  );

test('what is missing is counted in reps', () => {
  const only = (counts: readonly number[]): ComparedDriver =>
    compared(practices(counts))[0]!.drivers[0]!;
  // three practices of eight; five weeks of five; by hand
  expect(only([8])).toMatchObject({
    typicalErrorMissingReps: 16,
    trendMissingReps: 25,
    hiddenReps: 8,
  });
  expect(only([8, 8])).toMatchObject({ typicalErrorMissingReps: 8 });
  expect(only([8, 7])).toMatchObject({ typicalErrorMissingReps: 16, hiddenReps: 15 });
  const three = only([8, 8, 8]);
  expect(three.typicalErrorMissingReps).toBe(0);
  // medians 0.04, 0.05, 0.08: differences 0.01 and 0.03, their deviation 0.01414, over the root of two 0.01
  expect(three.progress.typicalErrorLevel).toBeCloseTo(0.01, 12);
});

test('conditions that differ are named, and what does not is not', () => {
  const wet = { ...CONDITIONS, condition: 'wet', sensor: 'travel' };
  const [found] = compared([aMeasure(), aMeasure({ driver: 'Bo', conditions: wet })]);
  expect(found!.mixed).toEqual([
    { name: 'sensor', values: ['force', 'travel'] },
    { name: 'condition', values: ['dry', 'wet'] },
  ]);
  expect(compared([aMeasure(), aMeasure({ driver: 'Bo' })])[0]!.mixed).toEqual([]);
});

test('the table has 80 columns, says what is missing, and no name gets through to the terminal', () => {
  const evil = 'Kim\u001b[2J{bold}\u202e of a very long line of names';
  const reps = [
    ...inTime([...weeksOf(evil, 1, 0.4), ...weeksOf('Bo', 2, 1)]),
    ...practices([8]).map((rep) => ({
      ...rep,
      driver: 'New',
      conditions: { ...CONDITIONS, foot: 'right' },
    })),
    ...practices([3]).map((rep) => ({ ...rep, targetId: 'rarely-driven' })),
  ];
  const text = comparisonText(compared(reps));
  for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  for (const unsafe of ['\u001b', '\u202e', '{', '}']) expect(text).not.toContain(unsafe);
  expect(text).toContain('16 reps missing  25 reps missing');
  expect(text).toContain('Mixed here: foot left and right.');
  expect(text).toContain('Under 8 hidden reps of any driver: rarely-driven 3.');
  expect(text).not.toContain('NaN');
});

test('names that differ only at their end can be told apart, on a line of their own', () => {
  const long = ['virtual driver, novice', 'virtual driver, skilled', 'x'.repeat(90)];
  const reps = long.flatMap((driver, i) =>
    practices([8]).map((rep) => ({ ...rep, driver, practiceId: rep.practiceId + 10 * i })),
  );
  const lines = comparisonText(compared(inTime(reps))).split('\n');
  expect(lines).toContain('virtual driver, novice');
  expect(lines).toContain('virtual driver, skilled');
  expect(lines).toContain(`${'x'.repeat(79)}…`);
});

test('a target that was changed is told by its days, one that was not by its name alone', () => {
  const edited = { ...CONDITIONS, targetVersion: 'a1b2c3d4e5f60718' };
  const heads = (reps: readonly RepMeasure[]): string[] =>
    comparisonText(compared(reps))
      .split('\n')
      .filter((line) => line.startsWith('hairpin'));
  const old = practices([8]);
  const bo = practices([0, 0, 8]).map((rep) => ({ ...rep, driver: 'Bo', conditions: edited }));
  expect(heads(old)).toEqual(['hairpin, score 1']);
  expect(heads(inTime([...old, ...bo])).toSorted()).toEqual([
    'hairpin, as driven since 2026-11-20, score 1',
    'hairpin, as driven since 2026-11-22, score 1',
  ]);
});
