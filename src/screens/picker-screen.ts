import { CAUTIONS } from '../drill/cautions.ts';
import type { LearnedButton } from '../drill/learned-buttons.ts';
import { countText } from '../number-text.ts';
import type { Area, CellGrid, Pen, Size } from './cell-grid.ts';
import { framedView } from './framed-view.ts';
import { drawHelp } from './help-overlay.ts';
import { PICKER_HELP } from './key-help.ts';
import { pickerKeys } from './key-names.ts';
import type { Look } from './look.ts';
import { fitText, wrapText, writeText } from './write-text.ts';

/** A target as the picker lists it. */
export interface PickerItem {
  readonly name: string;
  readonly cornerType: string;
  /** Whole days since it was last practised, 0 for today; null for never. */
  readonly daysSince: number | null;
  /** Reps kept of it. */
  readonly reps: number;
}

interface PickerScreenOptions extends Look {
  /** Buttons of the wheel that the footer can name. */
  readonly buttons?: readonly LearnedButton[];
  readonly help?: boolean;
  /** What is driven, for example `2 devices` or `virtual driver, club`. */
  readonly source?: string;
  /** What is missing on this machine and how to mend it, in at most two rows. */
  readonly message?: string | null;
}

const MESSAGE_ROWS = 2;
const LIST_TOP = 4;
const TYPE_COLS = 20;
const PRACTISED_COLS = 16;
const REPS_COLS = 10;

/** The list of targets to choose from, scrolled so that the selected one is in sight. */
export function pickerScreen(
  items: readonly PickerItem[],
  selected: number,
  size: Size,
  options: PickerScreenOptions,
): CellGrid {
  return framedView(size, options, (grid) => {
    const { theme } = options;
    const source = options.source === undefined ? '' : `  ·  ${options.source}`;
    writeText(grid, 1, 0, fitText(`Choose a target${source}`, grid.cols - 2), theme.strong);
    const message = wrapText(options.message ?? '', grid.cols - 2).slice(0, MESSAGE_ROWS);
    for (const [index, line] of message.entries()) writeText(grid, 1, 1 + index, line, theme.text);
    const cautions = CAUTIONS.flatMap((caution) => wrapText(caution, grid.cols - 2));
    const rows = grid.rows - LIST_TOP - cautions.length - 3;
    drawList(grid, { x: 1, y: LIST_TOP, cols: grid.cols - 2, rows }, items, selected, options);
    cautions.forEach((caution, index) => {
      writeText(grid, 1, grid.rows - 2 - cautions.length + index, caution, theme.quiet);
    });
    writeText(
      grid,
      1,
      grid.rows - 1,
      pickerKeys(options.buttons ?? [], grid.cols - 2),
      theme.quiet,
    );
    if (options.help === true) drawHelp(grid, PICKER_HELP, options);
  });
}

function drawList(
  grid: CellGrid,
  area: Area,
  items: readonly PickerItem[],
  selected: number,
  { theme }: Look,
): void {
  const nameCols = Math.min(60, area.cols - TYPE_COLS - PRACTISED_COLS - REPS_COLS - 2);
  const row = (cells: readonly [string, string, string, string]): string =>
    fitText(cells[0], nameCols - 1).padEnd(nameCols) +
    fitText(cells[1], TYPE_COLS - 1).padEnd(TYPE_COLS) +
    cells[2].padEnd(PRACTISED_COLS) +
    cells[3].padEnd(REPS_COLS);
  const write = (y: number, mark: string, text: string, pen: Pen) =>
    writeText(grid, area.x, y, `${mark} ${text}`, pen);
  write(area.y - 1, ' ', row(['target', 'corner', 'last practised', 'kept']), theme.quiet);
  const first = firstShown(items.length, selected, area.rows);
  items.slice(first, first + area.rows).forEach((item, index) => {
    const chosen = first + index === selected;
    const cells = row([
      item.name,
      item.cornerType,
      daysText(item.daysSince),
      countText(item.reps, 'rep'),
    ]);
    write(area.y + index, chosen ? '▶' : ' ', cells, chosen ? theme.alert : theme.text);
  });
  const below = items.length - first - area.rows;
  const text = items.length === 0 ? 'no targets found' : below > 0 ? `${below} more below` : '';
  write(area.y + Math.min(area.rows, items.length), ' ', text, theme.quiet);
}

function firstShown(count: number, selected: number, rows: number): number {
  return Math.max(0, Math.min(selected - (rows >> 1), count - rows));
}

function daysText(days: number | null): string {
  if (days === null) return 'never';
  if (days === 0) return 'today';
  return days === 1 ? 'yesterday' : `${days} days ago`;
}
