import { describe, expect, test } from 'vitest';
import type { DisplaySettings } from '../../src/drill/display/display-settings.ts';
import {
  LAYOUTS,
  PREVIEWS_S,
  THEME_NAMES,
  type ThemeName,
  ZOOMS,
} from '../../src/drill/display/display-settings.ts';
import type { DrillView } from '../../src/drill/drill-view.ts';
import { drillScreen } from '../../src/screens/drill-screen.ts';
import { toText } from '../../src/screens/grid-text.ts';
import { themeOf } from '../../src/screens/theme.ts';
import { inZone, withLive } from './live/sample-live.ts';
import { BRAKING, ownTrace } from './sample-views.ts';

const SIZES = [
  { cols: 80, rows: 24 },
  { cols: 120, rows: 36 },
  { cols: 160, rows: 48 },
];
const NOWS_S = Array.from({ length: 9 }, (_, i) => 0.31 * i);

const PLACES_M = [-62, -31, -8, 15, 41];

/** Every way in which the picture of a rep can be shown. */
const SHOWN: readonly Partial<DisplaySettings>[] = LAYOUTS.flatMap((layout) =>
  ZOOMS.flatMap((zoom) =>
    PREVIEWS_S.flatMap((previewS) =>
      [true, false].map((corridor) => ({ layout, zoom, previewS, corridor })),
    ),
  ),
);

function rowsOf(
  view: DrillView,
  size: (typeof SIZES)[number],
  unicode: boolean,
  theme: ThemeName = 'monochrome',
): string[] {
  return toText(drillScreen(view, size, { theme: themeOf(theme), unicode })).split('\n');
}

/** What stands in the columns under the words `now`, from each down to the foot of its plot, and around the words. */
function marked(rows: readonly string[]): { readonly lines: string[]; readonly around: string[] } {
  const lines: string[] = [];
  const around: string[] = [];
  rows.forEach((row, y) => {
    for (const { index } of row.matchAll(/now/g)) {
      const x = /[│|]/.test(row[index - 2] ?? '') ? index - 2 : index + 4;
      const foot = rows.findIndex((below, at) => at > y && / 0 % *[└+]/.test(below));
      lines.push(...rows.slice(y, foot).map((each) => each[x] ?? ''));
      around.push(`${row[index - 1] ?? ''}${row[index + 3] ?? ' '}`);
    }
  });
  return { lines, around };
}

function expectMarked(rows: readonly string[], unicode: boolean, what: string): void {
  const { lines, around } = marked(rows);
  expect(lines.length, what).toBeGreaterThan(2);
  expect(new Set(lines), what).toEqual(new Set([unicode ? '│' : '|']));
  expect(new Set(around), what).toEqual(new Set(['  ']));
}

describe.each(SIZES)('the now line at $cols x $rows', (size) => {
  describe.each([true, false])('with Unicode %s', (unicode) => {
    test('stands over every dot of target, corridor and own trace', () => {
      for (const display of SHOWN)
        for (const nowS of NOWS_S) {
          const shown = { ...BRAKING.display, ...display };
          const view = { ...BRAKING, nowS, own: ownTrace(nowS), display: shown };
          const what = JSON.stringify({ display, nowS });
          expectMarked(rowsOf(view, size, unicode), unicode, what);
        }
    });

    test('and over those of the road', () => {
      for (const display of SHOWN)
        for (const placeM of PLACES_M) {
          const shown = { ...BRAKING.display, ...display };
          const view = withLive(inZone(placeM), { display: shown });
          const what = JSON.stringify({ display, placeM });
          expectMarked(rowsOf(view, size, unicode), unicode, what);
        }
    });
  });

  test.each(THEME_NAMES)('looks alike in the theme %s', (theme) => {
    expectMarked(rowsOf(BRAKING, size, true, theme), true, theme);
  });
});
