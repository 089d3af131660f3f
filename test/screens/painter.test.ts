import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type CellGrid, createGrid, type Size } from '../../src/screens/cell-grid.ts';
import { startPainter } from '../../src/screens/painter.ts';

const SIZE = { cols: 2, rows: 1 };
const FRAMES_PER_S = 50;
const PERIOD_MS = 1000 / FRAMES_PER_S;
/** How far ahead of its time a frame may come. */
const EARLY_MS = PERIOD_MS / 2;
const painted: CellGrid[] = [];
let busy = false;

beforeEach(() => {
  vi.useFakeTimers();
  painted.length = 0;
  busy = false;
});
afterEach(() => {
  vi.useRealTimers();
});

function start() {
  const picture = {
    canvas: () => createGrid(SIZE),
    paint: (grid: CellGrid) => void painted.push(grid),
  };
  return startPainter(picture, FRAMES_PER_S, () => busy);
}

test('the first view is painted at once', () => {
  start().draw(createGrid);
  expect(painted).toHaveLength(1);
});

test('a view that comes when a frame is due is painted with it, and the frames keep their rate', () => {
  const painter = start();
  const startMs = performance.now();
  const paintedMs: number[] = [];
  const everyMs = 8;
  for (let atMs = 0; atMs <= 80; atMs += everyMs) {
    painter.draw((size) => {
      paintedMs.push(atMs, performance.now() - startMs);
      return createGrid(size);
    });
    vi.advanceTimersByTime(everyMs);
  }
  // By hand: due at 0, 20, 40, 60 and 80 ms, the first view 10 ms before each or later; in pairs, what came when and was
  // painted when.
  expect(paintedMs).toEqual([0, 0, 16, 16, 32, 32, 56, 56, 72, 72]);
});

test('views that come as often as frames are due are all painted when they come, a little early or late', () => {
  const painter = start();
  // After a pause frames are counted from the first view on, which comes late here.
  vi.advanceTimersByTime(1000);
  let evaluated = 0;
  const lateMs = [5, 0, -1, 2, -1, 0];
  let atMs = 0;
  for (const [i, late] of lateMs.entries()) {
    const nextMs = i * PERIOD_MS + late;
    vi.advanceTimersByTime(nextMs - atMs);
    atMs = nextMs;
    painter.draw((size) => {
      evaluated++;
      return createGrid(size);
    });
    expect(evaluated).toBe(i + 1);
  }
});

test('of many views between two frames only the last is evaluated', () => {
  const painter = start();
  painter.draw(createGrid);
  const views = Array.from({ length: 20 }, () => vi.fn((size: Size) => createGrid(size)));
  for (const view of views) painter.draw(view);
  vi.advanceTimersByTime(2 * PERIOD_MS);
  expect(views.map((view) => view.mock.calls.length)).toEqual([...Array(19).fill(0), 1]);
  expect(painted).toHaveLength(2);
});

test('after a pause frames do not come faster', () => {
  const painter = start();
  painter.draw(createGrid);
  vi.advanceTimersByTime(10 * PERIOD_MS + 3);
  painter.draw(createGrid);
  vi.advanceTimersByTime(PERIOD_MS - EARLY_MS - 1);
  painter.draw(createGrid);
  expect(painted).toHaveLength(2);
  vi.advanceTimersByTime(1);
  painter.draw(createGrid);
  expect(painted).toHaveLength(3);
});

test('nothing new paints nothing', () => {
  const painter = start();
  painter.draw(createGrid);
  vi.advanceTimersByTime(1000);
  expect(painted).toHaveLength(1);
});

test('a busy terminal skips frames and then gets the latest', () => {
  const painter = start();
  busy = true;
  painter.draw(createGrid);
  vi.advanceTimersByTime(200);
  expect(painted).toHaveLength(0);
  busy = false;
  vi.advanceTimersByTime(2 * PERIOD_MS);
  expect(painted).toHaveLength(1);
});

test('a repaint evaluates the same view again', () => {
  const painter = start();
  const view = vi.fn((size: Size) => createGrid(size));
  painter.draw(view);
  painter.repaint();
  vi.advanceTimersByTime(2 * PERIOD_MS);
  expect(view).toHaveBeenCalledTimes(2);
});

test('stopped is stopped', () => {
  const painter = start();
  painter.draw(createGrid);
  painter.draw(createGrid);
  painter.stop();
  vi.advanceTimersByTime(100);
  painter.draw(createGrid);
  expect(painted).toHaveLength(1);
});
