import { filter } from 'rxjs';
import type { DrillView } from '../drill/drill-view.ts';
import { drillScreen } from '../screens/drill-screen.ts';
import { remembered } from '../screens/remembered.ts';
import { KEY_ACTIONS } from '../screens/screen-action.ts';
import { FRAMES_PER_S, openTerminal, type TerminalScreen } from '../screens/terminal-screen.ts';
import type { Theme } from '../screens/theme.ts';
import type { CommandContext } from './command.ts';
import { type DrillDisplay, drillDisplay } from './drill-display.ts';
import { runDrill } from './drill-loop.ts';
import type { DrillOptions } from './drill-options.ts';
import { openPractice, type Practice, seedOf } from './drill-practice.ts';
import { type DrillSound, openDrillSound } from './drill-sound.ts';
import { type DrillSubject, type EventSubject, findSubject } from './drill-subject.ts';
import { summaryTexts, type ToldBlock } from './drill-told.ts';
import { openRigSource, type RigSource, type RigSourceNeeds } from './rig-source.ts';
import { routedKeys } from './routed-keys.ts';
import { SpareTurns } from './spare-turns.ts';
import { zonedNow } from './zoned-now.ts';

/** The drill in the terminal: choose a target where none was named, drive blocks until the driver finishes. */
export async function drillOnScreen(
  options: DrillOptions,
  context: CommandContext,
): Promise<number> {
  const open: { rigSource: RigSource | null; practice: Practice | null } = {
    rigSource: null,
    practice: null,
  };
  const spareTurns = new SpareTurns();
  const shutdown = async (): Promise<void> => {
    // A rep that is over is kept, however soon after it a signal ends the program.
    spareTurns.finish();
    open.practice?.store.close();
    await (open.practice ?? open.rigSource)?.source.close();
  };
  // A corner that does not exist is better said before devices are set up and the screen is taken.
  const named = await findSubject(options, context.dataDir);
  const needs: RigSourceNeeds = {
    dataDir: context.dataDir,
    seed: seedOf(options),
    headless: false,
    // Between two frames nobody sees what a batch brings; a tone is heard sooner.
    ...(options.sound ? {} : { batchMs: 1000 / FRAMES_PER_S }),
    pointer$: null,
    setUp: async (devices) => {
      const { setUpBeforeDrill } = await import('./set-up-before-drill.ts');
      return setUpBeforeDrill(devices, context);
    },
  };
  const pointer = options.source.kind === 'pointer';
  // Setting up devices is done in lines, so the screen comes after it; the mouse comes with the screen.
  open.rigSource = pointer ? null : await openRigSource(options.source, needs);
  const sound = await openDrillSound(options.sound, context);
  let screen: TerminalScreen | null = null;
  let display: DrillDisplay | null = null;
  let said: readonly string[] = [];
  let notice: string | null = null;
  try {
    const { env, color, units } = context;
    screen = openTerminal({ env, color, units, pointer, shutdown });
    open.rigSource ??= await openRigSource(options.source, { ...needs, pointer$: screen.pointer$ });
    const { rigSource } = open;
    display = await drillDisplay(options, context, rigSource);
    const themed = display.themed(screen);
    const choose = async (): Promise<DrillSubject | null> => {
      const { chooseSubject } = await import('./choose-subject.ts');
      return chooseSubject(themed, context, options, rigSource);
    };
    const subject = named ?? (await choose());
    if (subject === null) return 0;
    open.practice = await openPractice(options, context, rigSource, subject, display.settings);
    notice = open.practice.store.notice;
    const last = await drive(screen, open.practice, sound, display, spareTurns);
    said = last === null ? [] : summaryTexts(last.summary, last.plan);
    if (subject.kind === 'event')
      said = [...said, ...(await endEvent(subject, open.practice, display.themed(screen), last))];
  } finally {
    sound.close();
    screen?.close();
    await shutdown();
  }
  // On the screen it would be in the way of driving; nothing is lost by saying it afterwards.
  for (const line of [notice, (await display?.settled()) ?? null])
    if (line !== null) context.err(`${line}\n`);
  if (said.length > 0) context.out(`${said.join('\n')}\n`);
  return 0;
}

/** Shows what to drive tonight, unless nothing was driven. @returns the same in lines */
async function endEvent(
  subject: EventSubject,
  practice: Practice,
  screen: TerminalScreen,
  last: ToldBlock | null,
): Promise<readonly string[]> {
  const { eventEnd, eventEndLines } = await import('./event-end.ts');
  const end = eventEnd(subject, practice, zonedNow());
  if (practice.log.practiceId !== null) {
    const { showTonight } = await import('./show-tonight.ts');
    await showTonight(screen, end, last);
  }
  return eventEndLines(end);
}

/** @returns the last block, null where none was finished */
async function drive(
  screen: TerminalScreen,
  practice: Practice,
  sound: DrillSound,
  display: DrillDisplay,
  spareTurns: SpareTurns,
): Promise<ToldBlock | null> {
  const shown: { view: DrillView | null; help: boolean; last: ToldBlock | null } = {
    view: null,
    help: false,
    last: null,
  };
  const lookWith = remembered((theme: Theme, help: boolean) => ({ ...screen.look, theme, help }));
  const draw = (): void => {
    const { view, help } = shown;
    const look = lookWith(display.theme, help && view?.note === null);
    if (view !== null) screen.draw((canvas) => drillScreen(view, canvas, look));
  };
  const isTyping = (): boolean => shown.view !== null && shown.view.note !== null;
  /** Help stands in front of everything that the drill knows of: Esc closes it alone. */
  const isForHelp = (name: string): boolean => {
    const action = KEY_ACTIONS.get(name);
    if (isTyping() || !(action === 'help' || (action === 'close' && shown.help))) return false;
    shown.help = !shown.help;
    draw();
    return true;
  };
  const names$ = screen.keyNames$.pipe(filter((name) => !isForHelp(name)));
  await runDrill(practice.source, practice.decoder, practice.setup, {
    store: (rep) => practice.log.add(rep),
    rate: (rep, rating) => practice.log.rate(rep, rating),
    note: (rep) => practice.log.mark(rep),
    noteText: (rep, text) => practice.log.say(rep, text),
    display: (settings) => display.change(settings),
    ...routedKeys(names$, isTyping),
    spareTurns,
    onView: (view) => {
      shown.view = view;
      sound.follow(view);
      draw();
    },
    onSummary: (summary, plan) => {
      shown.last = { summary, plan };
    },
  });
  return shown.last;
}
