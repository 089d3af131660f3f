import { describe, expect, test } from 'vitest';
import { drillScreen } from '../../../src/screens/drill-screen.ts';
import { toText } from '../../../src/screens/grid-text.ts';
import { COLOUR_THEME } from '../../../src/screens/theme.ts';
import { LIVE_VIEWS } from './sample-live.ts';

const LOOK = { theme: COLOUR_THEME, unicode: true };
const SIZES = [
  { cols: 80, rows: 24 },
  { cols: 160, rows: 48 },
];

describe.each(SIZES)('at $cols x $rows', (size) => {
  const name = (state: string) => `golden/${state}-${size.cols}x${size.rows}.txt`;

  test.each(Object.entries(LIVE_VIEWS))('%s', async (state, view) => {
    const text = `${toText(drillScreen(view, size, LOOK))}\n`;
    await expect(text).toMatchFileSnapshot(name(state));
  });

  test.each(['approach', 'zone', 'rest'])('%s in ASCII', async (state) => {
    const look = { ...LOOK, unicode: false };
    const text = `${toText(drillScreen(LIVE_VIEWS[state]!, size, look))}\n`;
    await expect(text).toMatchFileSnapshot(name(`${state}-ascii`));
  });
});
