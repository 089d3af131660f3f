import {
  DISPLAY_PARTS,
  type DisplayPart,
  type DisplaySettings,
  partText,
} from '../drill/display/display-settings.ts';
import { keyOrButton, type LearnedButton, listDown } from '../drill/learned-buttons.ts';
import { type CellGrid, clearArea } from './cell-grid.ts';
import type { Look } from './look.ts';
import { fitText, textWidth, writeText } from './write-text.ts';

const KEYS: Readonly<Record<DisplayPart, string>> = {
  layout: 'l',
  preview: 'a',
  zoom: 'z',
  corridor: 'c',
  theme: 't',
  picture: 'v',
};
const NAME_COLS = 11;
const COLS = 50;
const TOP = 3;

/** The list of settings in the corner, with the picture they change beside it. */
export function drawDisplayMenu(
  grid: CellGrid,
  settings: DisplaySettings,
  selected: number,
  buttons: readonly LearnedButton[],
  { theme }: Look,
): void {
  const x = grid.cols - COLS - 1;
  const inner = COLS - 2;
  clearArea(grid, { x, y: TOP, cols: COLS, rows: DISPLAY_PARTS.length + 3 });
  const edge = '─'.repeat(inner);
  writeText(grid, x, TOP, `┌${edge}┐`, theme.quiet);
  writeText(grid, x + 2, TOP, ' display ', theme.strong);
  DISPLAY_PARTS.forEach((part, i) => {
    const chosen = i === selected;
    const words = `${chosen ? '▶' : ' '} ${part.padEnd(NAME_COLS)}${partText(settings, part)}`;
    const row = TOP + 1 + i;
    writeText(grid, x, row, '│', theme.quiet);
    const text = ` ${words.padEnd(inner - 4)} ${KEYS[part]} `;
    writeText(grid, x + 1, row, text, chosen ? theme.alert : theme.text);
    writeText(grid, x + COLS - 1, row, '│', theme.quiet);
  });
  const foot = TOP + 1 + DISPLAY_PARTS.length;
  writeText(grid, x, foot, `│${' '.repeat(inner)}│`, theme.quiet);
  writeText(grid, x + 2, foot, fitText(keysText(buttons, inner - 2), inner - 2), theme.quiet);
  writeText(grid, x, foot + 1, `└${edge}┘`, theme.quiet);
}

function keysText(buttons: readonly LearnedButton[], width: number): string {
  const text = [
    `${keyOrButton('up', buttons, 'downshift')}, ${keyOrButton('down', buttons, listDown(buttons))}`,
    `${keyOrButton('space', buttons, 'next')} changes`,
    `${keyOrButton('d', buttons, 'display')} closes`,
  ].join('  ');
  return textWidth(text) <= width ? text : 'up, down  space changes  d closes';
}
