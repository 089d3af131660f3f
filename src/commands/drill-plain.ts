import { type Observable, Subject } from 'rxjs';
import type { KeyAction } from '../drill/drill-message.ts';
import type { DrillView } from '../drill/drill-view.ts';
import { buttonsText } from '../drill/learned-buttons.ts';
import type { NoteKey } from '../drill/note-typing.ts';
import { PLAIN_KEYS, plainKey } from '../drill/plain/plain-key.ts';
import { plainSentences, type Said } from '../drill/plain/plain-sentences.ts';
import { plainText } from '../drill/plain/plain-text.ts';
import { RATING_WAIT_S } from '../drill/rating-wait.ts';
import type { Rig } from '../input/rig/rig.ts';
import { choosePlain } from './choose-plain.ts';
import type { CommandContext } from './command.ts';
import { remarksOf, titleOf } from './drill-headless.ts';
import { runDrill } from './drill-loop.ts';
import type { DrillOptions } from './drill-options.ts';
import { openPractice, type Practice, seedOf } from './drill-practice.ts';
import { type DrillSound, openDrillSound } from './drill-sound.ts';
import { findSubject } from './drill-subject.ts';
import { newTold, repTexts, summaryTexts } from './drill-told.ts';
import { eventEnd, eventEndLines } from './event-end.ts';
import { openRigSource } from './rig-source.ts';
import { setUpBeforeDrill } from './set-up-before-drill.ts';
import { TypedLines } from './typed-lines.ts';
import { zonedNow } from './zoned-now.ts';

const INTERRUPTED = 130;

/** The drill in lines that are only ever added, for a screen reader: keys are typed as lines, or pressed on the wheel. */
export async function drillPlain(options: DrillOptions, context: CommandContext): Promise<number> {
  const named = await findSubject(options, context.dataDir);
  const opened = await openRigSource(options.source, {
    dataDir: context.dataDir,
    seed: seedOf(options),
    headless: false,
    pointer$: null,
    setUp: (devices) => setUpBeforeDrill(devices, context),
  });
  const rigSource = { ...opened, rig: withoutDisplay(opened.rig) };
  const say = (line: string): void => {
    const text = plainText(line);
    if (text !== '') context.out(`${text}\n`);
  };
  const sound = await openDrillSound(options.sound, context);
  const typed = new TypedLines(process.stdin);
  let interrupted = false;
  const onInterrupt = (): void => {
    interrupted = true;
    typed.close();
    void rigSource.source.close();
  };
  process.once('SIGINT', onInterrupt);
  let practice: Practice | null = null;
  try {
    if (rigSource.note !== null) say(rigSource.note);
    const subject = named ?? (await choosePlain(typed, say, { options, context, rigSource }));
    if (subject === null) return interrupted ? INTERRUPTED : 0;
    practice = await openPractice(options, context, rigSource, subject);
    if (practice.store.notice !== null) say(practice.store.notice);
    say(`${titleOf(subject)}  ${practice.source.label}. Type ? and Enter for the keys.`);
    if (rigSource.kind === 'hid') say(buttonsText(practice.setup.buttons));
    for (const remark of remarksOf(practice.setup)) say(remark);
    await drive(practice, typed, sound, say);
    if (subject.kind === 'event')
      for (const line of eventEndLines(eventEnd(subject, practice, zonedNow()))) say(line);
    return interrupted ? INTERRUPTED : 0;
  } finally {
    process.off('SIGINT', onInterrupt);
    typed.close();
    sound.close();
    practice?.store.close();
    await (practice ?? rigSource).source.close();
  }
}

/** There is no picture to be set. */
function withoutDisplay(rig: Rig): Rig {
  const buttons = rig.buttons.map((button) =>
    button.action === 'display' ? { ...button, action: null } : button,
  );
  return { ...rig, buttons };
}

async function drive(
  practice: Practice,
  typed: TypedLines,
  sound: DrillSound,
  say: (line: string) => void,
): Promise<void> {
  const told = newTold();
  let said: Said | null = null;
  const { keys$, typed$, stop } = keysOf(typed, say, () => said?.view ?? null);
  try {
    const setup = { ...practice.setup, ratingWaitS: RATING_WAIT_S };
    await runDrill(practice.source, practice.decoder, setup, {
      store: (rep) => practice.log.add(rep),
      rate: (rep, rating) => practice.log.rate(rep, rating),
      note: (rep) => practice.log.mark(rep),
      noteText: (rep, text) => practice.log.say(rep, text),
      keys$,
      typed$,
      // Where nobody types any more nobody starts a next block either.
      get unattended() {
        return typed.ended;
      },
      onRep: (line, rep) => {
        told.reps.push({ line, rep });
        for (const text of repTexts(told, practice.setup)) say(text);
      },
      onSummary: (summary, plan) => {
        for (const text of summaryTexts(summary, plan)) say(text);
      },
      onView: (view) => {
        sound.follow(view);
        const [sentences, next] = plainSentences(said, view);
        said = next;
        for (const sentence of sentences) say(sentence);
      },
    });
  } finally {
    stop();
  }
}

interface PlainKeys {
  readonly keys$: Observable<KeyAction>;
  readonly typed$: Observable<NoteKey>;
  stop(): void;
}

/** A line is a key, or the words of a note while one is asked for. */
function keysOf(
  typed: TypedLines,
  say: (line: string) => void,
  view: () => DrillView | null,
): PlainKeys {
  const keys$ = new Subject<KeyAction>();
  const typed$ = new Subject<NoteKey>();
  const listening = typed.lines$.subscribe((line) => {
    if ((view()?.note ?? null) !== null) typeNote(line, typed$);
    else {
      const key = plainKey(line);
      if (key === 'help') for (const text of PLAIN_KEYS) say(text);
      else if (key === null) say(`${line.trim()} is no key here; ? and Enter lists them.`);
      else keys$.next(key);
    }
  });
  return { keys$, typed$, stop: () => listening.unsubscribe() };
}

function typeNote(line: string, typed$: Subject<NoteKey>): void {
  for (const text of line) typed$.next({ kind: 'character', text });
  typed$.next({ kind: 'done' });
}
