import { addDays, mondayOf } from '../consistency/iso-week.ts';
import { localDate } from '../consistency/local-date.ts';
import { allReps } from '../consistency/rep-columns.ts';
import { weeksProgress } from '../consistency/weeks/weeks-progress.ts';
import { CAUTIONS } from '../drill/cautions.ts';
import type { HistoryStore } from '../history/store.ts';
import { cleanText } from '../input/discovery/clean-text.ts';
import { Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import type { SeriesReview, WeeksReview } from '../report/review/practice-review.ts';
import type { Target } from '../target/target.ts';
import type { CommandContext } from './command.ts';
import { latestSpread } from './latest-spread.ts';
import { reviewNote } from './practice-review.ts';
import { subjectReps } from './subject-reps.ts';
import { wordedNotes } from './worded-notes.ts';

interface WeeksChoice {
  /** The reader's local date. */
  readonly today: string;
  readonly weeks: number;
  /** Id of a corner or a target, or the path of a target file; null for all. */
  readonly subject: string | null;
  readonly driver: string | null;
  /** Targets that are not in the usual folders. */
  readonly given: readonly Target[];
}

/**
 * Gathers what the page of some weeks says.
 *
 * @throws Problem where there are no such reps
 */
export async function weeksReview(
  history: HistoryStore,
  { today, weeks, subject, driver, given }: WeeksChoice,
  { dataDir, units }: Pick<CommandContext, 'dataDir' | 'units'>,
): Promise<WeeksReview> {
  const own = driver === null ? {} : { driver };
  const found = await subjectReps(history, subject, driver, dataDir);
  if (found === null) throw nothingOf(history, subject, driver);
  const all = weeksProgress(allReps(found.columns), { today, weeks });
  if (all.length === 0)
    throw new Problem(`there are no reps in the last ${weeks} weeks`, {
      where: 'report',
      next: 'Say a larger --weeks.',
    });
  const series: SeriesReview[] = [];
  const files = [...found.given, ...given];
  for (const progress of all)
    series.push({ progress, units, spread: await latestSpread(history, progress, dataDir, files) });
  const from = addDays(mondayOf(today), -7 * (weeks - 1));
  const notes = wordedNotes(history.notes(own)).filter(
    ({ at, corner }) => localDate(at) >= from && (subject === null || corner === subject),
  );
  return {
    today,
    weeks,
    series,
    notes: notes.map((note) => reviewNote(note, new Map())),
    cautions: CAUTIONS,
  };
}

function nothingOf(history: HistoryStore, subject: string | null, driver: string | null): Problem {
  const whose = driver === null ? '' : ` of driver ${JSON.stringify(driver)}`;
  const what = subject === null ? '' : ` on ${JSON.stringify(subject)}`;
  const all = history.columns({}).shared;
  if (all.length === 0)
    return new Problem('there are no reps yet', {
      where: 'report',
      next: 'Drive some with `ebbline drill`, or try `ebbline virtual history --help`.',
    });
  const isDriver = driver === null || all.some((rep) => rep.driver === driver);
  const names = [...new Set(all.map((rep) => (isDriver ? rep.targetId : rep.driver)))];
  const near = nearest((isDriver ? subject : driver) ?? '', names);
  const guess = near === null ? '' : `Did you mean ${cleanText(near)}? `;
  return new Problem(`there are no reps${what}${whose}`, {
    where: 'report',
    next: `${guess}There are reps of: ${names.map((name) => cleanText(name)).join(', ')}.`,
  });
}
