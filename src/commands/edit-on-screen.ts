import type { Subscription } from 'rxjs';
import { EDIT_KEYS } from '../screens/edit/edit-keys.ts';
import { editScreen } from '../screens/edit/edit-screen.ts';
import { openTerminal, type TerminalScreen } from '../screens/terminal-screen.ts';
import type { DerivedTarget } from '../target/derive/derive-target.ts';
import type { EditEffect, EditMessage } from '../target/edit/edit-message.ts';
import { type EditModel, isChanged, startEdit } from '../target/edit/edit-model.ts';
import { updateEdit } from '../target/edit/update-edit.ts';
import type { CommandContext } from './command.ts';
import { editedCar, type FoundCar, fullScaleBar } from './edited-car.ts';
import { freeName, writeOver } from './edited-file.ts';
import type { EditedSource } from './edited-source.ts';
import { type KeptChanges, keepChanges, readKept } from './kept-changes.ts';

/** Edits a target on the terminal until the coach quits. @returns what to say on stderr then */
export async function editOnScreen(
  source: EditedSource,
  found: FoundCar,
  context: CommandContext,
): Promise<string> {
  const kept = keepChanges(source.path);
  const session = new Session(source, kept);
  session.model = await begin(source, found.note);
  const screen = openTerminal({ ...context, shutdown: () => session.keepNow() });
  const show = (): void => draw(screen, session, found.derived, context);
  show();
  try {
    await new Promise<void>((resolve, reject) => {
      const keys: Subscription = screen.keyNames$.subscribe((name) => {
        const message = EDIT_KEYS.get(name);
        if (message === undefined) return;
        session.take(message, show).then((isOver) => {
          if (!isOver) return;
          keys.unsubscribe();
          resolve();
        }, reject);
      });
    });
  } catch (error) {
    await session.keepNow();
    throw error;
  } finally {
    screen.close();
  }
  await session.settle();
  return session.told();
}

async function begin({ now, path, known }: EditedSource, note: string | null): Promise<EditModel> {
  const model = startEdit(now, path, known !== null);
  const kept = await readKept(path);
  if (kept !== null && kept.text !== now.text)
    return { ...model, question: { kind: 'restore', ...kept } };
  return { ...model, said: note === null ? null : { kind: 'refused', words: note } };
}

/** What the picture shows is worked out when it is drawn, once for several keys. */
function draw(
  screen: TerminalScreen,
  session: Session,
  derived: DerivedTarget | null,
  { units }: CommandContext,
): void {
  const { model, path } = session;
  const { target } = model.now;
  screen.draw((canvas) =>
    editScreen(
      {
        model,
        path,
        units,
        fullScaleBar: fullScaleBar(target, derived),
        car: derived === null ? null : editedCar(derived, target),
      },
      canvas,
      screen.look,
    ),
  );
}

/** The model on its way through keys and files. */
class Session {
  model!: EditModel;
  path: string;
  #known: string | null;
  #saved = false;
  readonly #kept: KeptChanges;
  #running: Promise<unknown> = Promise.resolve();

  constructor({ path, known }: EditedSource, kept: KeptChanges) {
    this.path = path;
    this.#known = known;
    this.#kept = kept;
  }

  /** Takes a message and does what it asks for, one after the other. @returns true where that was the end */
  take(message: EditMessage, show: () => void): Promise<boolean> {
    const next = this.#running.then(() => this.#update(message, show));
    this.#running = next.catch(() => {});
    return next;
  }

  async #update(message: EditMessage, show: () => void): Promise<boolean> {
    const [model, effects] = updateEdit(this.model, message);
    this.model = model;
    show();
    let isOver = false;
    for (const effect of effects) isOver = (await this.#perform(effect, show)) || isOver;
    if (this.model.question?.kind !== 'restore')
      this.#kept.later(isChanged(this.model) && !isOver ? this.model.now.text : null);
    return isOver;
  }

  async #perform(effect: EditEffect, show: () => void): Promise<boolean> {
    if (effect.kind === 'quit') return true;
    if (effect.kind === 'drop-kept') {
      await this.#kept.drop();
      return false;
    }
    return this.#update(await this.#write(effect), show);
  }

  async #write({
    text,
    path,
    thenQuit,
  }: Extract<EditEffect, { kind: 'write' }>): Promise<EditMessage> {
    const place = path ?? this.path;
    try {
      const outcome = await writeOver(place, text, path === null ? this.#known : null);
      if (outcome === 'changed')
        return { kind: 'changed-on-disk', beside: await freeName(place), quit: thenQuit };
    } catch (error) {
      return { kind: 'not-saved', why: `It cannot be saved: ${(error as Error).message}` };
    }
    [this.path, this.#known, this.#saved] = [place, text, true];
    return { kind: 'saved', text, path: place, quit: thenQuit };
  }

  /** What is not saved, where the program is ended from outside. */
  async keepNow(): Promise<void> {
    if (isChanged(this.model)) this.#kept.later(this.model.now.text);
    await this.settle();
  }

  /** What an earlier run left stays until the coach has said what to do with it. */
  async settle(): Promise<void> {
    if (this.model.question?.kind !== 'restore') await this.#kept.now();
  }

  told(): string {
    return this.#saved ? `Saved to ${this.path}.\n` : 'Nothing was saved.\n';
  }
}
