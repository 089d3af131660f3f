import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type CellGrid, createGrid, type Size } from '../../src/screens/cell-grid.ts';
import { startPainter } from '../../src/screens/painter.ts';

const SIZE = { cols: 2, rows: 1 };
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
  const picture = { size: (): Size => SIZE, paint: (grid: CellGrid) => void painted.push(grid) };
  return startPainter(picture, 50, () => busy);
}

test('only the last of many views is evaluated and painted, once per tick', () => {
  const painter = start();
  const views = Array.from({ length: 20 }, () => vi.fn((size: Size) => createGrid(size)));
  for (const view of views) painter.draw(view);
  vi.advanceTimersByTime(20);
  expect(views.map((view) => view.mock.calls.length)).toEqual([...Array(19).fill(0), 1]);
  expect(painted).toHaveLength(1);
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
  vi.advanceTimersByTime(20);
  expect(painted).toHaveLength(1);
});

test('a repaint evaluates the same view again', () => {
  const painter = start();
  const view = vi.fn((size: Size) => createGrid(size));
  painter.draw(view);
  vi.advanceTimersByTime(20);
  painter.repaint();
  vi.advanceTimersByTime(20);
  expect(view).toHaveBeenCalledTimes(2);
});

test('stopped is stopped', () => {
  const painter = start();
  painter.draw(createGrid);
  painter.stop();
  vi.advanceTimersByTime(100);
  expect(painted).toHaveLength(0);
});
