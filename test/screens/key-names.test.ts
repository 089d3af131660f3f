import { expect, test } from 'vitest';
import { BUTTON_JOBS, type LearnedButton } from '../../src/drill/learned-buttons.ts';
import { createGrid } from '../../src/screens/cell-grid.ts';
import { drillScreen } from '../../src/screens/drill-screen.ts';
import { toText } from '../../src/screens/grid-text.ts';
import { drawHelp } from '../../src/screens/help-overlay.ts';
import { DRILL_HELP, LIVE_HELP } from '../../src/screens/key-help.ts';
import { drillKeys, pickerKeys, withButtons } from '../../src/screens/key-names.ts';
import { COLOUR_THEME } from '../../src/screens/theme.ts';
import { DRILL_VIEWS } from './sample-views.ts';

const ALL: readonly LearnedButton[] = BUTTON_JOBS.map(([action], i) => ({
  action,
  control: `wheel button ${i + 11}`,
}));
const SOME: readonly LearnedButton[] = [
  { action: 'next', control: 'button 4' },
  { action: 'repeat', control: 'button at bit 131' },
];

test('the footer names a button where one was learned, and only there', () => {
  expect(drillKeys([], 78)).toBe(
    'space next  r repeat  p pause  f feedback  n note  ? help  q finish',
  );
  expect(drillKeys([SOME[0]!], 78)).toBe(
    'space/B4 next  r repeat  p pause  f feedback  n note  ? help  q finish',
  );
});

test('where keys and buttons do not fit the buttons stand alone', () => {
  expect(drillKeys(ALL, 78)).toBe(
    'B13 next  B14 repeat  B15 pause  B16 feedback  B17 note  ? help  B20 finish',
  );
  expect(drillKeys(ALL, 120)).toMatch(/^space\/B13 next {2}r\/B14 repeat/);
});

test('the picker names paddles and buttons', () => {
  expect(pickerKeys(ALL, 78)).toBe(
    'up or B11, down or B12 choose  enter or B13 drill  ? help  q or B20 quit',
  );
  expect(pickerKeys(SOME, 78)).toBe(
    'up, down or bit 131 choose  enter or B4 drill  ? help  q quit',
  );
});

test.each([
  ['drill', DRILL_HELP],
  ['live car', LIVE_HELP],
] as const)(
  'help on the %s says which jobs have no button, in the smallest terminal',
  (_, help) => {
    for (const buttons of [[], SOME, SOME.slice(0, 1), ALL]) {
      const lines = withButtons(help, buttons);
      const grid = createGrid({ cols: 80, rows: 24 });
      drawHelp(grid, lines, { theme: COLOUR_THEME, unicode: true });
      const rows = toText(grid).split('\n');
      expect(rows.filter((row) => /^ *│ .* │$/.test(row))).toHaveLength(lines.length);
      expect(rows.filter((row) => /^ *└─+┘$/.test(row))).toHaveLength(1);
      for (const [, text] of lines) expect(toText(grid)).toContain(text);
      expect(rows.at(-1)).toBe('');
    }
    const noButton = (buttons: readonly LearnedButton[]) =>
      withButtons(help, buttons).find(([key]) => key === 'no button')?.[1];
    expect(noButton(SOME)).toBe('all but next, repeat: `rig setup --buttons`');
    expect(noButton(ALL.slice(0, 7))).toBe('finish, self-rating, display: `rig setup --buttons`');
    expect(noButton(ALL)).toBeUndefined();
  },
);

test('prompts name the button as learned, and none that was not', () => {
  const size = { cols: 80, rows: 24 };
  const shown = (name: string, buttons: readonly LearnedButton[]) =>
    toText(
      drillScreen({ ...DRILL_VIEWS[name]!, buttons }, size, { theme: COLOUR_THEME, unicode: true }),
    );
  expect(shown('summary', ALL)).toContain(
    'Block finished: space or B13 starts the next one, q or B20 finishes.',
  );
  expect(shown('summary', SOME)).toContain('space or B4 starts the next one, q finishes.');
  expect(shown('rating', ALL)).toContain('1 or B11 light, 2 or B13 right, 3 or B12 heavy');
  expect(shown('rating', SOME)).toContain('1 or bit 131 light, 2 or B4 right, 3 heavy');
  expect(shown('lap-rest', SOME)).toContain('space or B4 comes sooner.');
});
