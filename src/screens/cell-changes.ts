import { attributeOf } from './cell-attribute.ts';
import { type CellGrid, DEFAULT_INK, isSameRow } from './cell-grid.ts';
import { characterOf } from './character-of.ts';

// ECMA-48: select graphic rendition (SGR) without parameters.
const PLAIN_PEN = '\x1b[m';
const PLAIN: number = attributeOf(DEFAULT_INK, 0);

/** The control sequence that turns the plain pen into the one of an attribute. */
export type PenText = (attribute: number) => string;

/**
 * What a terminal that shows a grid has to be sent to show another one of its size; it begins and ends with the plain
 * pen. The very last cell is left out: some terminals scroll when it is written.
 */
export function cellChanges(grid: CellGrid, shown: CellGrid, penText: PenText): string {
  const text = new ChangesText(penText);
  for (let y = 0; y < grid.rows; y++) if (!isSameRow(grid, shown, y)) addRow(text, grid, shown, y);
  return text.ended();
}

function addRow(text: ChangesText, grid: CellGrid, shown: CellGrid, y: number): void {
  const { cols, rows, code, ink, style } = grid;
  const start = y * cols;
  const end = Math.min(start + cols, cols * rows - 1);
  for (let at = start; at < end; at++) {
    if (code[at] === shown.code[at] && ink[at] === shown.ink[at] && style[at] === shown.style[at])
      continue;
    text.moveTo(at - start, y);
    text.write(code[at]!, attributeOf(ink[at]!, style[at]!));
  }
}

class ChangesText {
  readonly #penText: PenText;
  #text = '';
  #pen = PLAIN;
  /** Where the cursor stands; -1 before it was set. */
  #x = -1;
  #y = -1;

  constructor(penText: PenText) {
    this.#penText = penText;
  }

  /** To a place behind the last one, by ECMA-48's cursor position (CUP), or cursor right (CUF) in the same row. */
  moveTo(x: number, y: number): void {
    if (y !== this.#y) this.#text += `\x1b[${y + 1};${x + 1}H`;
    else if (x !== this.#x) this.#text += `\x1b[${x - this.#x}C`;
    this.#x = x;
    this.#y = y;
  }

  write(code: number, attribute: number): void {
    if (attribute !== this.#pen) this.#take(attribute);
    this.#text += characterOf(code);
    this.#x += 1;
  }

  ended(): string {
    this.#take(PLAIN);
    return this.#text;
  }

  #take(attribute: number): void {
    if (this.#pen !== PLAIN) this.#text += PLAIN_PEN;
    if (attribute !== PLAIN) this.#text += this.#penText(attribute);
    this.#pen = attribute;
  }
}
