import { plainText } from '../drill/plain/plain-text.ts';
import { choosePlain } from './choose-plain.ts';
import type { CommandContext } from './command.ts';
import type { DrillOptions } from './drill-options.ts';
import { openPractice } from './drill-practice.ts';
import { openDrillSound } from './drill-sound.ts';
import { type DrillSubject, findSubject } from './drill-subject.ts';
import { drivePlain } from './drive-plain.ts';
import { eventEnd, eventEndLines } from './event-end.ts';
import { interruptible } from './interrupted.ts';
import { OpenDrill } from './open-drill.ts';
import { openPlainSource } from './open-plain-source.ts';
import { plainBeginning } from './plain-beginning.ts';
import type { RigSource } from './rig-source.ts';
import { TypedLines } from './typed-lines.ts';
import { zonedNow } from './zoned-now.ts';

const INTERRUPTED = 130;

/** The drill in lines that are only ever added, for a screen reader: keys are typed as lines, or pressed on the wheel. */
export async function drillPlain(options: DrillOptions, context: CommandContext): Promise<number> {
  const named = await findSubject(options, context.dataDir);
  const rigSource = await openPlainSource(options, context);
  const open = new OpenDrill(rigSource, await openDrillSound(options.sound, context));
  const typed = new TypedLines(process.stdin);
  open.front = typed;
  const stop = (): void => {
    typed.close();
    void rigSource.source.close();
  };
  try {
    return await interruptible(async (stopped) => {
      await chooseAndDrive({ open, rigSource, typed, named }, options, context);
      return stopped.asked ? INTERRUPTED : 0;
    }, stop);
  } finally {
    await open.close();
  }
}

/** What a drill in lines begins with. */
interface Begun {
  readonly open: OpenDrill;
  readonly rigSource: RigSource;
  readonly typed: TypedLines;
  /** Null where the driver has to choose. */
  readonly named: DrillSubject | null;
}

async function chooseAndDrive(
  { open, rigSource, typed, named }: Begun,
  options: DrillOptions,
  context: CommandContext,
): Promise<void> {
  const say = (line: string): void => {
    const text = plainText(line);
    if (text !== '') context.out(`${text}\n`);
  };
  if (rigSource.note !== null) say(rigSource.note);
  const subject = named ?? (await choosePlain(typed, say, { options, context, rigSource }));
  if (subject === null) return;
  const practice = await openPractice(options, context, rigSource, subject);
  open.practice = practice;
  for (const line of plainBeginning(subject, practice, rigSource)) say(line);
  await drivePlain(practice, typed, open.sound, say);
  if (subject.kind === 'event')
    for (const line of eventEndLines(eventEnd(subject, practice, zonedNow()))) say(line);
}
