import type { TerminalScreen } from '../screens/terminal-screen.ts';
import type { DrillDisplay } from './drill-display.ts';
import { runDrill } from './drill-loop.ts';
import type { Practice } from './drill-practice.ts';
import type { ToldBlock } from './drill-told.ts';
import { logHooks } from './log-hooks.ts';
import type { OpenDrill } from './open-drill.ts';
import { routedKeys } from './routed-keys.ts';
import { ShownDrill } from './shown-drill.ts';

/** Drives blocks until the driver finishes. @returns the last block, null where none was finished */
export async function driveOnScreen(
  screen: TerminalScreen,
  display: DrillDisplay,
  { source, decoder, setup, log }: Practice,
  { sound, spareTurns }: Pick<OpenDrill, 'sound' | 'spareTurns'>,
): Promise<ToldBlock | null> {
  const shown = new ShownDrill(screen, display);
  let last: ToldBlock | null = null;
  await runDrill(source, decoder, setup, {
    ...logHooks(log),
    ...routedKeys(shown.names$, () => shown.isTyping),
    spareTurns,
    display: (settings) => display.change(settings),
    onView: (view) => {
      sound.follow(view);
      shown.show(view);
    },
    onSummary: (summary, plan) => {
      last = { summary, plan };
    },
  });
  return last;
}
