import type { CellGrid } from './cell-grid.ts';

const LOOK_ALIKES: Readonly<Record<string, string>> = {
  '█': '#',
  '▉': '#',
  '▊': '#',
  '▋': '#',
  '▌': '=',
  '▍': '=',
  '▎': '-',
  '▏': '-',
  '░': '.',
  '─': '-',
  '━': '=',
  '╌': '-',
  '│': '|',
  '┤': '+',
  '┬': '+',
  '┴': '+',
  '└': '+',
  '┘': '+',
  '┌': '+',
  '┐': '+',
  '┼': '+',
  '▲': '^',
  '○': 'o',
  '●': '@',
  '▼': 'v',
  '◀': '<',
  '▶': '>',
  '·': '-',
  '…': '~',
  '×': 'x',
  '’': "'",
};

const CODES: ReadonlyMap<number, number> = new Map(
  Object.entries(LOOK_ALIKES).map(([from, to]) => [from.codePointAt(0)!, to.charCodeAt(0)]),
);

/** Replaces in place whatever a terminal without UTF-8 cannot show: by a look-alike, or by `?`. */
export function asciiFallback(grid: CellGrid): void {
  grid.code.forEach((code, cell) => {
    if (code > 0x7e) grid.code[cell] = CODES.get(code) ?? 0x3f;
  });
}
