import { createRequire } from 'node:module';
import type { Readable, Writable } from 'node:stream';
import type { Widgets } from 'blessed';
import { type Observable, Subject } from 'rxjs';
import type { CellGrid, Size } from './cell-grid.ts';
import { compileSequencesLate } from './late-sequences.ts';
import { gridCopier, type ScreenLine } from './screen-cells.ts';

const require = createRequire(import.meta.url);
/** The two parts that are used: loading all widgets of the library takes longer than the first picture. */
const openBlessed: (
  options: Widgets.IScreenOptions,
) => Widgets.Screen = require('blessed/lib/widgets/screen.js');
const openBox: (
  options: Widgets.BoxOptions,
) => Widgets.BoxElement = require('blessed/lib/widgets/box.js');
compileSequencesLate(require('blessed/lib/tput.js'));

interface PictureOptions {
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly unicode: boolean;
  /** True to follow the mouse. */
  readonly pointer: boolean;
  /** Where to draw and whence keys come; the process's own terminal by default. */
  readonly output?: Writable;
  readonly input?: Readable;
}

/** One full-screen picture on the alternate screen, and the only thing that knows the terminal library. */
export interface BlessedPicture {
  /** Names of keys, as the library has them. */
  readonly keys$: Observable<string>;
  /** After the terminal's size has been still for 100 ms. */
  readonly resizes$: Observable<Size>;
  /** Row of the mouse, from 0 at the top. */
  readonly mouseRows$: Observable<number>;
  /** As last reported, which is a moment behind the terminal while that is being resized. */
  size(): Size;
  /** A grid of that size to draw on, with whatever a frame has left there; the next `paint` takes it back. */
  canvas(): CellGrid;
  paint(grid: CellGrid): void;
  /** Forgets what the terminal shows, so that the next frame is drawn whole. */
  forget(): void;
  /** Gives the terminal to the shell for a while, and takes it again. */
  leave(): void;
  enter(): void;
  destroy(): void;
}

/** What the library has and its types leave out. */
interface UntypedScreen {
  readonly lines: readonly ScreenLine[];
  readonly tput: { brokenACS: boolean };
  readonly program: {
    /** Waits for the next flush. */
    _buf: string;
    /** Writes in order with what is drawn, in one piece when flushed, which happens in the next turn of the event loop. */
    _write(text: string): void;
  };
  enter(): void;
  leave(): void;
}

// DEC private mode 2026, synchronised output: the terminal shows a frame whole. Ignored where it is not known.
const FRAME_BEGIN = '\x1b[?2026h';
const FRAME_END = '\x1b[?2026l';
// xterm control sequences: every move of the mouse (1003), with columns beyond 223 (1006).
const MOUSE_ON = '\x1b[?1003h\x1b[?1006h';
const MOUSE_OFF = '\x1b[?1006l\x1b[?1003l';

/** Takes the terminal over. */
export function openPicture(options: PictureOptions): BlessedPicture {
  const screen = openScreen(options);
  const library = screen as unknown as UntypedScreen;
  const { program } = screen;
  const mouse = (mode: string): void => {
    if (options.pointer) library.program._write(mode);
  };
  const shown = showGrid(screen);
  const size = (): Size => ({ cols: program.cols, rows: program.rows });
  const events = listen(screen, size, options.pointer);
  mouse(MOUSE_ON);
  return {
    ...events,
    size,
    canvas: () => shown.copier.canvas(size()),
    paint: (grid) => {
      if (!shown.copier.isNews(grid, library.lines)) return;
      shown.grid = grid;
      // Not by `_write`: it is flushed below, and there is no need for a turn of the event loop of its own.
      library.program._buf += FRAME_BEGIN;
      screen.render();
      library.program._write(FRAME_END);
      program.flush();
    },
    forget: () => screen.alloc(),
    leave: () => {
      mouse(MOUSE_OFF);
      library.leave();
      process.stdin.setRawMode(false);
    },
    enter: () => {
      // Off first: a mode that a shell has changed meanwhile is only set again where it seems to differ.
      process.stdin.setRawMode(false);
      process.stdin.setRawMode(true);
      library.enter();
      mouse(MOUSE_ON);
    },
    destroy: () => {
      mouse(MOUSE_OFF);
      screen.destroy();
    },
  };
}

function openScreen({ env, unicode, output, input }: PictureOptions): Widgets.Screen {
  // The library's types have the two directions the wrong way round.
  const streams = {
    input: input ?? process.stdin,
    output: output ?? process.stdout,
  } as unknown as { input: Writable; output: Readable };
  const screen = openBlessed({
    ...streams,
    // The library's descriptions of newer terminals give eight colours only; all of them understand xterm's.
    terminal: env.TERM === 'linux' ? 'linux' : 'xterm-256color',
    forceUnicode: unicode,
    fullUnicode: false,
    warnings: false,
    smartCSR: false,
    resizeTimeout: 100,
  });
  // Lines by switching charsets are only needed where there is no UTF-8, and there the picture is ASCII.
  (screen as unknown as UntypedScreen).tput.brokenACS = true;
  return screen;
}

interface ShownGrid {
  grid: CellGrid | null;
  readonly copier: ReturnType<typeof gridCopier>;
}

/** A box that writes a grid's cells straight into the picture, at a fifth of the cost of text laid out by the library. */
function showGrid(screen: Widgets.Screen): ShownGrid {
  const shown: ShownGrid = { grid: null, copier: gridCopier() };
  const box = openBox({ parent: screen, top: 0, left: 0, width: '100%', height: '100%' });
  Object.assign(box, {
    render: () => {
      if (shown.grid !== null)
        shown.copier.copy(shown.grid, (screen as unknown as UntypedScreen).lines);
    },
  });
  return shown;
}

function listen(
  screen: Widgets.Screen,
  size: () => Size,
  pointer: boolean,
): Pick<BlessedPicture, 'keys$' | 'resizes$' | 'mouseRows$'> {
  const keys$ = new Subject<string>();
  const resizes$ = new Subject<Size>();
  const mouseRows$ = new Subject<number>();
  screen.program.on('keypress', (_: string | undefined, key: { full: string }) =>
    keys$.next(key.full),
  );
  screen.on('resize', () => resizes$.next(size()));
  // Listening alone would make the library read mouse sequences.
  if (pointer) screen.program.on('mouse', ({ y }: { y: number }) => mouseRows$.next(y));
  return { keys$, resizes$, mouseRows$ };
}
