import type { CellGrid, Size } from '../cell-grid.ts';
import { framedView } from '../framed-view.ts';
import { drawHelp } from '../help-overlay.ts';
import type { Look } from '../look.ts';
import { scaleBetween } from '../plot-scale.ts';
import { fitText, wrapText, writeRight, writeText } from '../write-text.ts';
import { alongOf, endsOf } from './along-axis.ts';
import { EDIT_FOOTER, EDIT_HELP } from './edit-keys.ts';
import { editLayout } from './edit-layout.ts';
import { editNumbers, fileState, stepText } from './edit-numbers.ts';
import { drawEditPlot } from './edit-plot.ts';
import type { EditView } from './edit-view.ts';
import { editWords } from './edit-words.ts';
import { drawGripStrips } from './grip-strips.ts';
import { drawRateLane } from './rate-lane.ts';

const MESSAGE_ROWS = 2;

/** A target being edited: its curve with all points, its rate, its numbers, and what a car would do with it. */
export function editScreen(view: EditView, size: Size, look: Look): CellGrid {
  return framedView(size, look, (grid) => {
    const layout = editLayout(size, view.car !== null);
    const { target } = view.model.now;
    drawTitle(grid, layout.title, view, look);
    drawHeadings(grid, layout.headings, view, look);
    const ends = endsOf(target, mostAllowed(view));
    const scale = scaleBetween(ends, layout.plot);
    drawEditPlot(grid, layout.plot, ends, scale, view, look);
    drawRateLane(grid, layout.rate, target, scale, look);
    if (layout.grip !== null && view.car !== null)
      drawGripStrips(grid, layout.grip, scale, view.car, target.domain, look);
    editNumbers(view, layout.side.cols)
      .slice(0, layout.side.rows)
      .forEach(({ text, pen }, row) => {
        const shown = fitText(text, layout.side.cols);
        writeText(grid, layout.side.x, layout.side.y + row, shown, look.theme[pen]);
      });
    drawWords(grid, layout.message, view, look);
    writeText(grid, 1, layout.keys, EDIT_FOOTER, look.theme.quiet);
    if (view.model.help) drawHelp(grid, EDIT_HELP, look);
  });
}

function drawTitle(grid: CellGrid, row: number, view: EditView, { theme }: Look): void {
  const state = fileState(view);
  const { name } = view.model.now.target;
  const title = fitText(`${name}  ·  ${view.path}`, grid.cols - state.length - 5);
  writeText(grid, 1, row, title, theme.strong);
  writeRight(grid, grid.cols - 2, row, state, state === 'saved' ? theme.quiet : theme.strong);
}

function drawHeadings(grid: CellGrid, row: number, view: EditView, { theme, unicode }: Look): void {
  const [dash, dots, line] = unicode ? ['╌╌', '··', '━━'] : ['--', '..', '##'];
  let x = writeText(grid, 1, row, 'brake, %  ', theme.quiet);
  x = writeText(grid, x, row, `${line} target ${dots} corridor  `, theme.target);
  if (view.car !== null) x = writeText(grid, x, row, `${dash} grip  `, theme.quiet);
  x = writeText(grid, x, row, '○ ', theme.strong);
  writeText(grid, x, row, '● point', theme.driver);
  writeRight(grid, grid.cols - 2, row, stepText(view), theme.quiet);
}

/** The highest level that the grip allows along the target; 0 without a car. */
function mostAllowed({ car, model }: EditView): number {
  if (car === null) return 0;
  const { marks, domain } = model.now.target;
  const [from, to] = [alongOf(domain, marks.rise), alongOf(domain, marks.brakeOff)];
  const places = Array.from({ length: 50 }, (_, i) => from + ((to - from) * i) / 49);
  return Math.max(...places.map((along) => car.limitAt(alongOf(domain, along))));
}

function drawWords(grid: CellGrid, row: number, view: EditView, { theme }: Look): void {
  const words = editWords(view);
  if (words === null) return;
  wrapText(words.text, grid.cols - 4)
    .slice(0, MESSAGE_ROWS)
    .forEach((line, i) => {
      const text = words.pen === 'alert' ? ` ${line} ` : line;
      writeText(grid, 1, row + i, text, theme[words.pen]);
    });
}
