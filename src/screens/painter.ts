import type { BlessedPicture } from './blessed-picture.ts';
import type { CellGrid } from './cell-grid.ts';

/** Draws on the grid that is given, or on another one of its size. */
export type GridView = (canvas: CellGrid) => CellGrid;

/** Paints the latest view at most once per frame, and only when there is something new. */
interface Painter {
  /** Shows a view: at once where a frame is due, else with the first view after it is, or a little later without one. */
  draw(view: GridView): void;
  /** Paints the same view once more. */
  repaint(): void;
  /** From here on nothing is painted, whatever is drawn: the terminal belongs to the shell again. */
  stop(): void;
}

/**
 * How far ahead of its frame, in periods, a view is painted: to wait would make it old, and views that come as often as
 * frames are due, but a little before them, would be kept waiting every time.
 */
const EARLY_PERIODS = 0.5;
/** When a frame is painted without a further view, in periods after it was due: views come more often than that. */
const LATE_PERIODS = 0.5;

/**
 * A frame is painted with the news that it shows: a timer of its own would let half of it grow old, and wake the
 * processor once more.
 *
 * @param isBusy true while the terminal has not taken the last frame; the frame is skipped then, not queued
 */
export function startPainter(
  picture: Pick<BlessedPicture, 'paint' | 'canvas'>,
  framesPerSecond: number,
  isBusy: () => boolean,
): Painter {
  const periodMs = 1000 / framesPerSecond;
  let view: GridView | null = null;
  let wanted = false;
  let stopped = false;
  let dueMs = 0;
  let timer: NodeJS.Timeout | null = null;
  const paint = (): void => {
    if (stopped || !wanted || view === null || isBusy()) return;
    wanted = false;
    dueMs = nextDue(dueMs, periodMs, performance.now());
    picture.paint(view(picture.canvas()));
  };
  // Armed for a view that was not painted and left alone when it is: moving a timer costs a turn of the event loop.
  const paintLater = (): void => {
    if (!wanted || stopped) return;
    timer ??= setTimeout(
      () => {
        timer = null;
        if (performance.now() >= dueMs) paint();
        paintLater();
      },
      Math.max(0, dueMs - performance.now()) + LATE_PERIODS * periodMs,
    );
  };
  return {
    draw: (next) => {
      view = next;
      wanted = true;
      if (performance.now() >= dueMs - EARLY_PERIODS * periodMs) paint();
      paintLater();
    },
    repaint: () => {
      wanted = view !== null;
      paintLater();
    },
    stop: () => {
      stopped = true;
      if (timer !== null) clearTimeout(timer);
    },
  };
}

/** Frames are due at even times, so that one that comes late does not make fewer of them; after a pause from now on. */
function nextDue(dueMs: number, periodMs: number, nowMs: number): number {
  return nowMs - dueMs < periodMs ? dueMs + periodMs : nowMs + periodMs;
}
