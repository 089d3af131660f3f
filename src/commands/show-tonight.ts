import { filter, firstValueFrom } from 'rxjs';
import type { TerminalScreen } from '../screens/terminal-screen.ts';
import { tonightScreen } from '../screens/tonight-screen.ts';
import type { ToldBlock } from './drill-told.ts';
import type { EventEnd } from './event-end.ts';
import { tonightHeading, tonightTexts } from './event-tonight.ts';

/** What to work on tonight, until the driver leaves it. @param last block of the laps, null where none was finished */
export async function showTonight(
  screen: TerminalScreen,
  { subject, daysLeft, ranking, today }: EventEnd,
  last: ToldBlock | null,
): Promise<void> {
  const view = {
    name: `${subject.event.name}  ·  ${subject.session.session}`,
    summaries: last?.plan?.summaries ?? [],
    heading: tonightHeading(daysLeft),
    texts: tonightTexts(ranking, today),
  };
  screen.draw((canvas) => tonightScreen(view, canvas, screen.look));
  await firstValueFrom(
    screen.keys$.pipe(filter((key) => ['finish', 'next', 'choose', 'close'].includes(key))),
    { defaultValue: null },
  );
}
