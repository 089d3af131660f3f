import { localDate } from '../consistency/local-date.ts';
import { allReps, repsWhere, type SharedMeasure } from '../consistency/rep-columns.ts';
import { seriesOf } from '../consistency/weeks/series.ts';
import { type WeeksProgress, weeksProgress } from '../consistency/weeks/weeks-progress.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import { CAUTIONS } from '../drill/cautions.ts';
import type { HistoryStore, StoredNote, StoredPractice, StoredRep } from '../history/store.ts';
import type { PracticeReview, ReviewNote } from '../report/review/practice-review.ts';
import type { TextUnits } from '../unit-text.ts';
import { practiceBlocks } from './practice-blocks.ts';
import { ProgressLine, STDERR_PROGRESS } from './progress-line.ts';
import type { StoredSubjects } from './stored-subject.ts';
import { wordedNotes } from './worded-notes.ts';

/** Weeks up to a practice that its page shows. */
const WEEKS_BEFORE = 26;

/**
 * Gathers what the page of a practice says.
 *
 * @param subjects what its reps are laid on
 */
export async function practiceReview(
  history: HistoryStore,
  practice: StoredPractice,
  subjects: StoredSubjects,
  units: TextUnits,
): Promise<PracticeReview> {
  const reps = [...history.reps({ practiceId: practice.id })];
  const line = new ProgressLine(STDERR_PROGRESS, 'reps', reps.length);
  let done = 0;
  const onRep = (): void => line.show(++done);
  const blocks = await practiceBlocks(reps, { history, subjects, units, onRep });
  line.end();
  const progress = seriesUpTo(history, practice);
  return {
    practice: {
      number: practice.id,
      driver: practice.driver,
      startedAt: wallTime(practice.startedAt),
      conditions: conditionsOf(practice),
    },
    blocks,
    series: progress.map((one) => ({ progress: one, units, spread: null })),
    notes: notesOf(history, practice, reps),
    cautions: CAUTIONS,
  };
}

/** The series that the practice belongs to, as they stood on its day. */
function seriesUpTo(history: HistoryStore, practice: StoredPractice): WeeksProgress[] {
  const own = seriesOf(allReps(history.columns({ practiceId: practice.id })));
  const today = localDate(practice.startedAt);
  return own.flatMap((series) => {
    const { driver, targetId, source, foot, condition } = series;
    const isOwn = ({ practiceId, day, conditions }: SharedMeasure): boolean =>
      (day < today || (day === today && practiceId <= practice.id)) &&
      conditions.source === source &&
      conditions.foot === foot &&
      conditions.condition === condition;
    const reps = repsWhere(allReps(history.columns({ driver, targetId })), isOwn);
    return weeksProgress(reps, { today, weeks: WEEKS_BEFORE });
  });
}

/** Notes on its reps, and those that its driver wrote that day on none. */
function notesOf(
  history: HistoryStore,
  { driver, startedAt }: StoredPractice,
  reps: readonly StoredRep[],
): ReviewNote[] {
  const numbers = new Map(reps.map(({ id, number }) => [id, number]));
  const day = localDate(startedAt);
  const isOwn = ({ repId, at }: StoredNote): boolean =>
    repId === null ? localDate(at) === day : numbers.has(repId);
  return wordedNotes(history.notes({ driver }))
    .filter(isOwn)
    .map((note) => reviewNote(note, numbers));
}

/** @param numbers of reps in their practice, by id */
export function reviewNote(
  { at, text, corner, variant, gear, repId }: StoredNote,
  numbers: ReadonlyMap<number, number>,
): ReviewNote {
  const number = repId === null ? undefined : numbers.get(repId);
  const about = [
    number === undefined ? null : `rep ${number}`,
    corner,
    variant,
    gear === null ? null : `gear ${gear}`,
  ];
  return { at: wallTime(at), about: about.filter((part) => part !== null).join(', '), text };
}

/** As the clock on the driver's wall showed it, for example `2026-11-25 18:03`. */
function wallTime({ utcMs, offsetMin }: ZonedInstant): string {
  return new Date(utcMs + offsetMin * 60_000).toISOString().slice(0, 16).replace('T', ' ');
}

function conditionsOf({ source, sensor, foot, footwear }: StoredPractice): string[] {
  return [
    ...(source === 'hid' ? [] : [`source ${source}`]),
    ...(sensor === 'unknown' ? [] : [`${sensor} sensor`]),
    `${foot} foot`,
    ...(footwear === '' ? [] : [footwear]),
  ];
}
