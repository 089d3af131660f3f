import type { TargetSummary } from '../drill/drill-view.ts';
import type { CellGrid, Size } from './cell-grid.ts';
import { framedView } from './framed-view.ts';
import { drawLaps } from './lap-panel.ts';
import type { Look } from './look.ts';
import { fitText, wrapText, writeText } from './write-text.ts';

/** What a driver is told when the laps of an event are over. */
export interface TonightView {
  /** Of the event. */
  readonly name: string;
  /** How many laps of what were driven today, corner by corner; empty where none was finished. */
  readonly summaries: readonly TargetSummary[];
  /** Over the proposal. */
  readonly heading: string;
  /** What to work on, a paragraph each. */
  readonly texts: readonly string[];
}

const TOP = 2;
const KEYS = 'q leave; the same stands in the terminal afterwards';

/** The last laps above, below them what to work on; where both do not fit, the proposal alone. */
export function tonightScreen(view: TonightView, size: Size, look: Look): CellGrid {
  return framedView(size, look, (grid) => {
    const { theme } = look;
    const cols = grid.cols - 2;
    writeText(grid, 1, 0, fitText(view.name, cols), theme.strong);
    const said = view.texts.flatMap((text) => ['', ...wrapText(text, cols)]);
    const end = grid.rows - 2;
    const rows = view.summaries.length + 1;
    const hasRoom = rows > 1 && TOP + rows + 1 + said.length < end;
    if (hasRoom) drawLaps(grid, { x: 1, y: TOP, cols, rows }, view.summaries, look);
    const top = hasRoom ? TOP + rows + 1 : TOP;
    writeText(grid, 1, top, fitText(view.heading, cols), theme.strong);
    for (const [i, line] of said.slice(0, end - top - 1).entries())
      writeText(grid, 1, top + 1 + i, line, theme.text);
    writeText(grid, 1, grid.rows - 1, fitText(KEYS, cols), theme.quiet);
  });
}
