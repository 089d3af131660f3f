import { describe, expect, test } from 'vitest';
import { toText } from '../../src/screens/grid-text.ts';
import { COLOUR_THEME } from '../../src/screens/theme.ts';
import { type TonightView, tonightScreen } from '../../src/screens/tonight-screen.ts';
import { LAP_SUMMARIES } from './sample-views.ts';

const LOOK = { theme: COLOUR_THEME, unicode: true };
const VIEW: TonightView = {
  name: 'Sallow Fen test day  ·  qualifying',
  summaries: LAP_SUMMARIES,
  heading: 'Tonight, 12 days before the event',
  texts: [
    '1. Coil bend: a first lap is expected 9.4 % off: release error 6.1 % in 14 hidden reps, spread 2.1 %, first-of-day loss 1.2 %; 14 % too quick off the brake in 6 of the last 10 reps; 0.12 s lost to the slowest point; 2 days not practised.',
    '2. Kiln hairpin: a first lap is expected 7.0 % off: release error 4.8 % in 14 hidden reps, spread 2.2 %, first-of-day loss not known (2 of 5 reps); level with Beacon rise, left alone for longer.',
    '3. Beacon rise: a first lap is expected 7.1 % off: release error 5.0 % in 14 hidden reps, spread 2.1 %, first-of-day loss 0.0 %.',
    'Not enough reps to rank: it takes 10 hidden reps, two or more in a practice. Left out: Lantern gate (4).',
  ],
};

describe.each([
  { cols: 80, rows: 24 },
  { cols: 160, rows: 48 },
])('at $cols x $rows', (size) => {
  const golden = (name: string) => `golden/${name}-${size.cols}x${size.rows}.txt`;
  const text = (view: TonightView) => `${toText(tonightScreen(view, size, LOOK))}\n`;

  test('laps and what to work on', async () => {
    await expect(text(VIEW)).toMatchFileSnapshot(golden('tonight'));
  });

  test('nothing to rank', async () => {
    const view = { ...VIEW, summaries: LAP_SUMMARIES.slice(0, 2), texts: VIEW.texts.slice(3) };
    await expect(text(view)).toMatchFileSnapshot(golden('tonight-few'));
  });
});

test('what to work on goes before the laps where both do not fit', () => {
  const long = { ...VIEW, texts: [...VIEW.texts, ...VIEW.texts] };
  const text = toText(tonightScreen(long, { cols: 80, rows: 24 }, LOOK));
  expect(text).toContain('3. Beacon rise');
  expect(text).not.toContain('release error  cause');
});
