import { createRequire } from 'node:module';
import type { Readable, Writable } from 'node:stream';
import type { Widgets } from 'blessed';
import { type Observable, Subject } from 'rxjs';
import { cellChanges, type PenText } from './cell-changes.ts';
import type { CellGrid, Size } from './cell-grid.ts';
import { compileSequencesLate } from './late-sequences.ts';
import { copyCells, type ScreenLine } from './screen-cells.ts';
import { ShownGrid } from './shown-grid.ts';

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
  /** The control sequence of an attribute, in as many colours as the terminal has. */
  codeAttr(attribute: number): string;
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
  const size = (): Size => ({ cols: program.cols, rows: program.rows });
  const events = listen(screen, size, options.pointer);
  mouse(MOUSE_ON);
  return {
    ...events,
    size,
    ...paintingOn(screen, size),
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

/**
 * The library draws what is new to the terminal as a whole. What changes in it from frame to frame is written here: the
 * library would look at each cell of a changed row, and keep cells of its own.
 */
function paintingOn(
  screen: Widgets.Screen,
  size: () => Size,
): Pick<BlessedPicture, 'canvas' | 'paint'> {
  const library = screen as unknown as UntypedScreen;
  const shown = new ShownGrid();
  const penText = knownPens(library);
  showWhole(screen, shown);
  const paint = (grid: CellGrid): void => {
    const before = shown.on(library.lines, grid);
    if (before?.bytes.equals(grid.bytes) === true) return;
    // The library does not know what was written since it drew.
    if (before === null && shown.isDrawnOn(library.lines)) screen.alloc();
    shown.show(grid, library.lines);
    // Not by `_write`: it is flushed below, and there is no need for a turn of the event loop of its own.
    library.program._buf += FRAME_BEGIN;
    if (before === null) screen.render();
    else library.program._buf += cellChanges(grid, before, penText);
    library.program._buf += FRAME_END;
    screen.program.flush();
  };
  return { canvas: () => shown.canvas(size()), paint };
}

/**
 * A box that copies the grid that is shown straight into the library's picture, whenever that is rendered: for a frame
 * that is drawn whole, and by the library itself after a change of size.
 */
function showWhole(screen: Widgets.Screen, shown: ShownGrid): void {
  const library = screen as unknown as UntypedScreen;
  const box = openBox({ parent: screen, top: 0, left: 0, width: '100%', height: '100%' });
  const render = (): void => {
    const { grid } = shown;
    if (grid === null) return;
    copyCells(grid, library.lines);
    shown.show(grid, library.lines);
  };
  Object.assign(box, { render });
}

function knownPens(library: UntypedScreen): PenText {
  const known = new Map<number, string>();
  return (attribute) => {
    const text = known.get(attribute) ?? library.codeAttr(attribute);
    known.set(attribute, text);
    return text;
  };
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
