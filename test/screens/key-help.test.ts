import { expect, test } from 'vitest';
import { createGrid } from '../../src/screens/cell-grid.ts';
import { toText } from '../../src/screens/grid-text.ts';
import { drawHelp } from '../../src/screens/help-overlay.ts';
import { DRILL_HELP, LIVE_HELP, PICKER_HELP } from '../../src/screens/key-help.ts';
import { COLOUR_THEME } from '../../src/screens/theme.ts';

test.each([
  ['drill', DRILL_HELP],
  ['live car', LIVE_HELP],
  ['picker', PICKER_HELP],
])('help on the %s stands whole in the smallest terminal, its footer in sight', (_, lines) => {
  const grid = createGrid({ cols: 80, rows: 24 });
  drawHelp(grid, lines, { theme: COLOUR_THEME, unicode: true });
  const rows = toText(grid).split('\n');
  expect(rows.filter((row) => /^ *┌─ help ─+┐$/.test(row))).toHaveLength(1);
  expect(rows.filter((row) => /^ *│ .* │$/.test(row))).toHaveLength(lines.length);
  expect(rows.filter((row) => /^ *└─+┘$/.test(row))).toHaveLength(1);
  expect(rows.at(-1)).toBe('');
});
