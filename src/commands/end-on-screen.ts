import type { TerminalScreen } from '../screens/terminal-screen.ts';
import type { Practice } from './drill-practice.ts';
import type { DrillSubject } from './drill-subject.ts';
import type { ToldBlock } from './drill-told.ts';
import { zonedNow } from './zoned-now.ts';

/**
 * What the laps of an event end with: the screen shows what to drive tonight, unless nothing was driven.
 *
 * @param last their last block, null where none was finished
 * @returns the same in lines; none for any other drill
 */
export async function endOnScreen(
  subject: DrillSubject,
  practice: Practice,
  screen: TerminalScreen,
  last: ToldBlock | null,
): Promise<readonly string[]> {
  if (subject.kind !== 'event') return [];
  const { eventEnd, eventEndLines } = await import('./event-end.ts');
  const end = eventEnd(subject, practice, zonedNow());
  if (practice.log.practiceId !== null) {
    const { showTonight } = await import('./show-tonight.ts');
    await showTonight(screen, end, last);
  }
  return eventEndLines(end);
}
