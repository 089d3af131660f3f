import { openTerminal, type TerminalScreen } from '../screens/terminal-screen.ts';
import { wrapText } from '../screens/write-text.ts';
import { afterDrill } from './after-drill.ts';
import type { CommandContext } from './command.ts';
import { type DrillDisplay, drillDisplay } from './drill-display.ts';
import type { DrillOptions } from './drill-options.ts';
import { openPractice } from './drill-practice.ts';
import { openDrillSound } from './drill-sound.ts';
import { type DrillSubject, findSubject } from './drill-subject.ts';
import { summaryTexts } from './drill-told.ts';
import { driveOnScreen } from './drive-on-screen.ts';
import { endOnScreen } from './end-on-screen.ts';
import { OpenDrill } from './open-drill.ts';
import { openScreenSource } from './open-screen-source.ts';
import type { RigSource } from './rig-source.ts';

/** Narrower terminals than this are too small to drill on. */
const COLS = 80;

/** The drill in the terminal: choose a target where none was named, drive blocks until the driver finishes. */
export async function drillOnScreen(
  options: DrillOptions,
  context: CommandContext,
): Promise<number> {
  // A corner that does not exist is better said before devices are set up and the screen is taken.
  const named = await findSubject(options, context.dataDir);
  // Setting up devices is done in lines, so the screen comes after it; the mouse comes with the screen.
  const rigSource = isMouse(options) ? null : await openScreenSource(options, context, null);
  const open = new OpenDrill(rigSource, await openDrillSound(options.sound, context));
  let driven: Driven | null;
  try {
    driven = await chooseAndDrive(open, named, options, context);
  } finally {
    await open.close();
  }
  if (driven !== null) await tellAfterwards(driven, context);
  return 0;
}

/** What is left to say when the screen is gone. */
interface Driven {
  readonly display: DrillDisplay;
  /** Of the history; null for none. */
  readonly notice: string | null;
  /** The last block, what an event ends with, and where to go on. */
  readonly lines: readonly string[];
}

/** @returns null where the driver chose nothing to drill */
async function chooseAndDrive(
  open: OpenDrill,
  named: DrillSubject | null,
  options: DrillOptions,
  context: CommandContext,
): Promise<Driven | null> {
  const screen = takeScreen(open, options, context);
  open.rigSource ??= await openScreenSource(options, context, screen.pointer$);
  const display = await drillDisplay(options, context, open.rigSource);
  const subject = named ?? (await choose(display.themed(screen), context, options, open.rigSource));
  if (subject === null) return null;
  const practice = await openPractice(options, context, open.rigSource, subject, display.settings);
  open.practice = practice;
  const last = await driveOnScreen(screen, display, practice, open);
  const block = last === null ? [] : summaryTexts(last.summary, last.plan);
  const end = await endOnScreen(subject, practice, display.themed(screen), last);
  const next = afterDrill(practice.log.practiceId);
  return { display, notice: practice.store.notice, lines: [...block, ...end, ...next] };
}

function isMouse({ source }: DrillOptions): boolean {
  return source.kind === 'pointer';
}

function takeScreen(
  open: OpenDrill,
  options: DrillOptions,
  { env, color, units }: CommandContext,
): TerminalScreen {
  const shutdown = (): Promise<void> => open.shutdown();
  const screen = openTerminal({ env, color, units, pointer: isMouse(options), shutdown });
  open.front = screen;
  return screen;
}

async function choose(
  ...given: [TerminalScreen, CommandContext, DrillOptions, RigSource]
): Promise<DrillSubject | null> {
  const { chooseSubject } = await import('./choose-subject.ts');
  return chooseSubject(...given);
}

/** On the screen it would be in the way of driving; nothing is lost by saying it afterwards. */
async function tellAfterwards(
  { notice, display, lines }: Driven,
  { out, err }: CommandContext,
): Promise<void> {
  for (const line of [notice, await display.settled()]) if (line !== null) err(`${line}\n`);
  for (const line of lines) out(`${line.length > COLS ? wrapText(line, COLS).join('\n') : line}\n`);
}
