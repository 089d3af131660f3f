import { daysBetween } from '../consistency/days-between.ts';
import { localDate } from '../consistency/local-date.ts';
import type { CornerRanking } from '../consistency/tonight/rank-corners.ts';
import { tonightJson } from '../consistency/tonight/tonight-json.ts';
import type { CornerTonight } from '../consistency/tonight/tonight-words.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import { wrapText } from '../screens/write-text.ts';
import type { Practice } from './drill-practice.ts';
import type { EventSubject } from './drill-subject.ts';
import { eventTonight, tonightHeading, tonightTexts } from './event-tonight.ts';

const COLS = 80;

/** What is told when the laps of an event are over. */
export interface EventEnd {
  readonly subject: EventSubject;
  readonly today: string;
  readonly daysLeft: number;
  readonly ranking: CornerRanking<CornerTonight>;
}

/** @param practice its history still open */
export function eventEnd(
  subject: EventSubject,
  { store, driver, setup }: Pick<Practice, 'store' | 'driver' | 'setup'>,
  now: ZonedInstant,
): EventEnd {
  const today = localDate(now);
  return {
    subject,
    today,
    daysLeft: daysBetween(today, subject.event.date),
    ranking: eventTonight(subject, driver, store, setup.units),
  };
}

/** The proposal as lines of plain text. */
export function eventEndLines({ daysLeft, ranking, today }: EventEnd): readonly string[] {
  return [
    '',
    `${tonightHeading(daysLeft)}:`,
    ...tonightTexts(ranking, today).flatMap((text) => wrapText(text, COLS)),
  ];
}

/** What it adds to the JSON of the drill. */
export function eventEndJson({ subject, daysLeft, ranking, today }: EventEnd): object {
  return {
    plan: subject.plan?.id ?? null,
    event: subject.event.id,
    session: subject.session.session,
    days_left: daysLeft,
    ...tonightJson(ranking, today),
  };
}
