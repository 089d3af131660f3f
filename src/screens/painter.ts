import type { BlessedPicture } from './blessed-picture.ts';
import type { CellGrid, Size } from './cell-grid.ts';

export type GridView = (size: Size) => CellGrid;

/** Paints the latest view at most once per tick, and only when there is something new. */
export interface Painter {
  /** Shows a view from the next frame on. */
  draw(view: GridView): void;
  /** Paints the same view once more. */
  repaint(): void;
  stop(): void;
}

/**
 * One timer for all frames, so that nothing is painted per report.
 * @param isBusy true while the terminal has not taken the last frame; the frame is skipped then, not queued
 */
export function startPainter(
  picture: Pick<BlessedPicture, 'paint' | 'size'>,
  framesPerSecond: number,
  isBusy: () => boolean,
): Painter {
  let view: GridView | null = null;
  let wanted = false;
  const timer = setInterval(() => {
    if (!wanted || view === null || isBusy()) return;
    wanted = false;
    picture.paint(view(picture.size()));
  }, 1000 / framesPerSecond);
  return {
    draw: (next) => {
      view = next;
      wanted = true;
    },
    repaint: () => {
      wanted = true;
    },
    stop: () => clearInterval(timer),
  };
}
