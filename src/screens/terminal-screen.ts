import { filter, map, merge, Observable, of, type Subscription, share } from 'rxjs';
import { Problem } from '../problem.ts';
import type { TextUnits } from '../unit-text.ts';
import { type BlessedPicture, openPicture } from './blessed-picture.ts';
import type { Size } from './cell-grid.ts';
import { keyActions, wholeKeys } from './key-actions.ts';
import { type Look, lookOf } from './look.ts';
import { type GridView, startPainter } from './painter.ts';
import {
  isNoTerminalKey,
  isScreenAction,
  type ScreenAction,
  type TerminalAction,
} from './screen-action.ts';
import { allowSuspend } from './suspend.ts';
import { guardTerminal } from './terminal-guard.ts';

/** As many as most displays show. */
export const FRAMES_PER_S = 60;

interface TerminalOptions {
  readonly env: Readonly<Record<string, string | undefined>>;
  /** The program's decision on colour. */
  readonly color: boolean;
  readonly units?: TextUnits;
  /** True to follow the mouse, which takes selecting text away from the terminal. */
  readonly pointer?: boolean;
  /** `FRAMES_PER_S` by default, half of them over SSH. */
  readonly framesPerSecond?: number;
  /** Closes devices and files when a signal or an error ends the program; given a second. */
  readonly shutdown?: () => Promise<void>;
}

/** The terminal as one picture in cells, owned until it is closed. */
export interface TerminalScreen {
  readonly look: Look;
  readonly keys$: Observable<ScreenAction>;
  /** Keys by the library's names, for a screen with keys of its own; the terminal's own keys do not get here. */
  readonly keyNames$: Observable<string>;
  /** The size now, and whenever it has changed. */
  readonly size$: Observable<Size>;
  /** Height of the mouse, 0 at the bottom to 1 at the top; silent unless `pointer` was asked for. */
  readonly pointer$: Observable<number>;
  /**
   * Shows what `view` returns for the size of the moment, from the next frame on and again after a change of size.
   * Call it as often as there is news: only the last view before a frame is evaluated.
   */
  draw(view: GridView): void;
  /** Gives the terminal back. Idempotent. */
  close(): void;
}

/**
 * Takes the terminal over: alternate screen, keys, and a guard that gives it back whatever happens.
 * @throws Problem where stdin and stdout are not a terminal that can move its cursor.
 */
export function openTerminal(options: TerminalOptions): TerminalScreen {
  requireTerminal(options.env);
  const { units = 'metric' } = options;
  const look = { ...lookOf(options.env, options.color, process.platform), units };
  const { unicode } = look;
  const picture = openPicture({ env: options.env, unicode, pointer: options.pointer === true });
  const isBusy = (): boolean =>
    suspension.isAway() || process.stdout.writableNeedDrain || isResizing(picture.size());
  const painter = startPainter(picture, framesPerSecond(options), isBusy);
  const suspension = allowSuspend(picture, painter.repaint);
  const restore = once(() => {
    painter.stop();
    suspension.release();
    picture.destroy();
  });
  const guard = guardTerminal({ restore, shutdown: options.shutdown ?? (async () => {}) });
  const actions$ = keyActions(picture.keys$).pipe(share());
  const listening = obey(actions$, {
    interrupt: guard.interrupt,
    suspend: suspension.suspend,
    redraw: () => {
      picture.forget();
      painter.repaint();
    },
  });
  listening.add(picture.resizes$.subscribe(painter.repaint));
  return {
    look,
    keys$: actions$.pipe(filter(isScreenAction)),
    keyNames$: wholeKeys(picture.keys$).pipe(filter(isNoTerminalKey)),
    size$: sizes(picture),
    pointer$: heights(picture),
    draw: painter.draw,
    close: () => {
      listening.unsubscribe();
      restore();
      guard.release();
    },
  };
}

function requireTerminal(env: TerminalOptions['env']): void {
  if (process.stdin.isTTY === true && process.stdout.isTTY === true && env.TERM !== 'dumb') return;
  throw new Problem('the drill needs a terminal that can move its cursor', {
    next: 'Run it in a terminal window, or add `--headless` for plain lines.',
  });
}

function framesPerSecond({ env, framesPerSecond: asked }: TerminalOptions): number {
  const isRemote = (env.SSH_TTY ?? env.SSH_CONNECTION ?? '') !== '';
  return asked ?? (isRemote ? FRAMES_PER_S / 2 : FRAMES_PER_S);
}

/** Drawing for another size than the terminal has would make it scroll. */
function isResizing({ cols, rows }: Size): boolean {
  return process.stdout.columns !== cols || process.stdout.rows !== rows;
}

function obey(
  actions$: Observable<ScreenAction | TerminalAction>,
  terminal: Readonly<Record<TerminalAction, () => void>>,
): Subscription {
  return actions$.subscribe((action) => {
    if (!isScreenAction(action)) terminal[action]();
  });
}

function sizes(picture: BlessedPicture): Observable<Size> {
  return new Observable((subscriber) =>
    merge(of(picture.size()), picture.resizes$).subscribe(subscriber),
  );
}

function heights(picture: BlessedPicture): Observable<number> {
  return picture.mouseRows$.pipe(
    map((row) => Math.min(1, Math.max(0, 1 - row / (picture.size().rows - 1)))),
  );
}

function once(action: () => void): () => void {
  let done = false;
  return () => {
    if (done) return;
    done = true;
    action();
  };
}
