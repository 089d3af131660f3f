import { describe, expect, test } from 'vitest';
import type { LiveEvent } from '../../../src/live/live-event.ts';
import { createGrid } from '../../../src/screens/cell-grid.ts';
import { toText } from '../../../src/screens/grid-text.ts';
import { drawEventLetters } from '../../../src/screens/live/event-letters.ts';
import { eventWords } from '../../../src/screens/live/event-words.ts';
import { scaleBetween } from '../../../src/screens/plot-scale.ts';
import { COLOUR_THEME } from '../../../src/screens/theme.ts';

const AREA = { x: 0, y: 0, cols: 100, rows: 5 };
/** A metre per column. */
const SCALE = scaleBetween({ from: -50, to: 50, bottom: 0, top: 1 }, AREA);
const OWN = { placeM: Float64Array.of(-50, 30), value: Float64Array.of(0.5, 0.5) };

const grip = (
  kind: 'lock-up' | 'anti-lock',
  axle: 'front' | 'rear',
  fromM: number,
  toM: number | null,
): LiveEvent => ({ kind, axle, fromM, fromS: 0, toM, toS: null });
const shift = (kind: 'downshift' | 'upshift', atM: number, overRev = false): LiveEvent => ({
  kind,
  fromGear: 4,
  toGear: kind === 'downshift' ? 3 : 5,
  atM,
  atS: 0,
  rpm: 8000,
  overRev,
  rearUse: 0.8,
  byDriver: true,
});

function drawn(...events: readonly LiveEvent[]): readonly string[] {
  const grid = createGrid(AREA);
  drawEventLetters(grid, AREA, SCALE, events, OWN, { theme: COLOUR_THEME, unicode: true });
  return toText(grid).split('\n');
}

describe('letters above the trace', () => {
  test('go on for as long as wheels are locked', () => {
    const row = drawn(grip('lock-up', 'front', -20, -11))[1]!;
    expect(row).toBe(`${' '.repeat(30)}${'F'.repeat(10)}`);
  });

  test('go on to where the car is while it lasts', () => {
    const row = drawn(grip('anti-lock', 'rear', 25, null))[1]!;
    expect([row.indexOf('A'), row.lastIndexOf('A')]).toEqual([75, 80]);
  });

  test('one for each shift', () => {
    const row = drawn(shift('downshift', -40), shift('upshift', 10))[1]!;
    expect([row.indexOf('D'), row.indexOf('U')]).toEqual([10, 60]);
  });

  test('stay inside the picture', () => {
    expect(drawn(grip('lock-up', 'rear', -90, -45))[1]).toBe('R'.repeat(6));
    expect(drawn(shift('downshift', 70)).join('')).toBe('');
  });
});

test('events in words: grip first, shifts together', () => {
  const events = [
    shift('downshift', -40),
    grip('lock-up', 'front', -20, -11),
    shift('downshift', 12, true),
    grip('anti-lock', 'rear', 3, null),
    shift('upshift', 30),
  ];
  expect(eventWords(events)).toEqual([
    'F front locked 20 m to 11 m',
    'A anti-lock rear from +3 m',
    'D down to 3 at 40 m, 3 at +12 m (over-rev)',
    'U up to 5 at +30 m',
  ]);
  // feet of 0.3048 m: 65.6, 36.1, 9.8, 131.2, 39.4 and 98.4
  expect(eventWords(events, 'imperial')).toEqual([
    'F front locked 66 ft to 36 ft',
    'A anti-lock rear from +10 ft',
    'D down to 3 at 131 ft, 3 at +39 ft (over-rev)',
    'U up to 5 at +98 ft',
  ]);
});
