import { median } from '../consistency/median.ts';
import { cornerForm } from '../consistency/tonight/corner-form.ts';
import { type CornerRanking, rankCorners } from '../consistency/tonight/rank-corners.ts';
import { type CornerTonight, reasonOf, whyFewer } from '../consistency/tonight/tonight-words.ts';
import type { HistoryStore } from '../history/store.ts';
import { dominantCause } from '../score/dominant-cause.ts';
import type { RepOutcome } from '../score/rep-score.ts';
import { sharedTroubles } from '../score/trouble/shared-troubles.ts';
import type { TextUnits } from '../unit-text.ts';
import { cornerHistory } from './brief-source.ts';
import type { EventSubject } from './drill-subject.ts';
import type { LapZone } from './event-lap.ts';

/** The corners of an event that a driver should work on tonight, by all that the history knows of them. */
export function eventTonight(
  { lap }: Pick<EventSubject, 'lap'>,
  driver: string,
  history: HistoryStore,
  units: TextUnits,
): CornerRanking<CornerTonight> {
  const corners = lap.map((zone) => tonightIn(zone, driver, history, units));
  return rankCorners(corners, ({ form }) => form);
}

function tonightIn(
  { subject, derived }: LapZone,
  driver: string,
  history: HistoryStore,
  units: TextUnits,
): CornerTonight {
  const { reps, outcomes } = cornerHistory(derived, driver, history);
  return {
    form: cornerForm(subject.sheet.name, reps),
    troubles: sharedTroubles(outcomes, units),
    cause: dominantCause(outcomes)?.cause.kind ?? null,
    newestReps: outcomes.length,
    timeLostS: median(outcomes.flatMap(timeLostIn)),
  };
}

function timeLostIn(outcome: RepOutcome): readonly number[] {
  const lostS = outcome.kind === 'scored' ? (outcome.live?.timeLostS ?? null) : null;
  return lostS === null ? [] : [lostS];
}

/** Over the proposal. @param daysLeft until the event, negative after it */
export function tonightHeading(daysLeft: number): string {
  if (daysLeft <= 0) return 'Tonight';
  return `Tonight, ${daysLeft === 1 ? 'a day' : `${daysLeft} days`} before the event`;
}

/** The proposal as paragraphs: what to work on, each with its reason, and why there is no more. */
export function tonightTexts(
  ranking: CornerRanking<CornerTonight>,
  today: string,
): readonly string[] {
  const why = whyFewer(ranking);
  return [
    ...ranking.tonight.map(
      (ranked, i) => `${i + 1}. ${ranked.corner.form.name}: ${reasonOf(ranked, today)}.`,
    ),
    ...(why === null ? [] : [why]),
    ...(ranking.tonight.length === 0 ? [HOW_TO_GO_ON] : []),
  ];
}

/** Where hidden reps come from: the rule of `feedback-schedule.ts`. */
const HOW_TO_GO_ON =
  'Drive the laps again, or one corner by itself with `ebbline drill --corner CORNER --car CAR`: the first three reps of each are shown, after them every second one is hidden.';
