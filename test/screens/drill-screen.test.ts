import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DrillView } from '../../src/drill/drill-view.ts';
import { BOLD } from '../../src/screens/cell-grid.ts';
import { drillScreen } from '../../src/screens/drill-screen.ts';
import { toText } from '../../src/screens/grid-text.ts';
import { COLOUR_THEME, MONOCHROME_THEME } from '../../src/screens/theme.ts';
import { BRAKING, DRILL_VIEWS, HAIRPIN, ownTrace } from './sample-views.ts';

const LOOK = { theme: COLOUR_THEME, unicode: true };
const SIZES = [
  { cols: 80, rows: 24 },
  { cols: 160, rows: 48 },
];

describe.each(SIZES)('at $cols x $rows', (size) => {
  const name = (phase: string) => `golden/${phase}-${size.cols}x${size.rows}.txt`;
  const text = (view = BRAKING, options = {}) =>
    `${toText(drillScreen(view, size, { ...LOOK, ...options }))}\n`;

  test.each(Object.entries(DRILL_VIEWS))('%s', async (phase, view) => {
    await expect(text(view)).toMatchFileSnapshot(name(phase));
  });

  test('help', async () => {
    await expect(text(BRAKING, { help: true })).toMatchFileSnapshot(name('help'));
  });

  test('ascii', async () => {
    await expect(text(BRAKING, { unicode: false })).toMatchFileSnapshot(name('ascii'));
  });
});

/** What is driven by, at the sizes between. */
const IN_BETWEEN = ['countdown', 'braking-shown', 'stacked', 'result', 'summary'];

describe.each([
  { cols: 120, rows: 36 },
  { cols: 200, rows: 60 },
])('at $cols x $rows', (size) => {
  test.each(IN_BETWEEN)('%s', async (phase) => {
    const text = `${toText(drillScreen(DRILL_VIEWS[phase]!, size, LOOK))}\n`;
    await expect(text).toMatchFileSnapshot(`golden/${phase}-${size.cols}x${size.rows}.txt`);
  });
});

const SMALL = { cols: 80, rows: 24 };
const shown = (view: DrillView, size = SMALL) => toText(drillScreen(view, size, LOOK));

describe('what is shown when', () => {
  test('during the count nothing changes but the digit', () => {
    const count = DRILL_VIEWS.countdown!;
    const moved: DrillView = {
      ...count,
      atS: 101,
      toCueS: 2.01,
      brakeLevel: 0.9,
      throttleLevel: 1,
      steeringDeg: -90,
      gear: 5,
      liveErrorLevel: 0.5,
      health: count.health.map((device) => ({ ...device, rateHz: 313 })),
    };
    expect(shown(moved)).toBe(shown(count));
    expect(shown({ ...count, toCueS: 1.99 })).not.toBe(shown(count));
  });

  test.each(['hidden', 'first-of-day'] as const)(
    'a %s rep gives nothing of the pedal away',
    (feedback) => {
      for (const phase of ['cue', 'braking'] as const) {
        const still: DrillView = { ...BRAKING, phase, feedback, own: null, brakeLevel: 0 };
        const pressed: DrillView = {
          ...still,
          own: ownTrace(1.9),
          brakeLevel: 1,
          throttleLevel: 1,
        };
        expect(shown(pressed)).toBe(shown(still));
      }
    },
  );

  test('a first-of-day rep draws no target, no scale and no mark', () => {
    expect(shown(DRILL_VIEWS['braking-first-of-day']!)).not.toMatch(/[\u2800-\u28ff]|turn-in|80 %/);
  });

  test('the error so far is not given away while the score is held back', () => {
    expect(shown(BRAKING)).toContain('error so far 4.3 % rms');
    expect(shown(DRILL_VIEWS.hold!)).not.toContain('error');
  });

  test('the now line stands at 0 until the onset', () => {
    const column = (view: DrillView) => shown(view).split('\n')[14]!.indexOf('┴');
    const zero = shown(BRAKING).split('\n')[15]!.indexOf('0 s') + 1;
    expect(column(DRILL_VIEWS.cue!)).toBe(zero);
    expect(column(BRAKING)).toBeGreaterThan(zero);
  });

  test('a block that was ended early says how much of it was done', () => {
    const summary = DRILL_VIEWS.summary!;
    expect(shown(summary)).toMatch(/ {2}block of 10 reps\n Block finished: /);
    const ended = shown({ ...summary, done: 1 });
    expect(ended).toMatch(/ {2}block ended after 1 of 10 reps\n Block ended: /);
    expect(shown({ ...summary, done: 1, reps: 1 })).toMatch(/ {2}block of 1 rep\n/);
  });

  test('a message of the drill stands in front of the phase’s own', () => {
    const text = shown({ ...BRAKING, phase: 'paused', message: 'Brake pedal not calibrated' });
    expect(text).toContain('Brake pedal not calibrated');
    expect(text).not.toContain('Paused');
  });

  test('a hostile device name neither moves nor styles anything', () => {
    const device = { ...BRAKING.health[0]!, name: '\x1b[2J{red-fg}ペダル\u202e' };
    const lines = shown({ ...BRAKING, health: [device] }).split('\n');
    expect(lines[22]).toBe(
      ' reports: 0 dropped  ·  [2J{red-fg}???\u2026 998/s'.replace('\u2026', ''),
    );
  });

  test('where rows are finer than the corridor there is no zoom, and the result has its place', () => {
    const low = { ...HAIRPIN, peakLevel: 0.6 };
    const big = { cols: 160, rows: 48 };
    const braking = shown({ ...BRAKING, target: low }, big);
    expect(braking).not.toContain('zoom');
    expect(shown({ ...DRILL_VIEWS.result!, target: low }, big)).toContain(
      '20 % too quick off the brake',
    );
  });
});

describe('any size', () => {
  const anyView = fc.constantFrom(...Object.values(DRILL_VIEWS));

  test('below 80 x 24 it says what it needs', () => {
    expect(shown(BRAKING, { cols: 79, rows: 24 }).trim()).toBe('need 80x24, have 79x24');
    expect(shown(BRAKING, { cols: 200, rows: 23 }).trim()).toBe('need 80x24, have 200x23');
  });

  test('is filled without an error, and the last cell stays blank', () => {
    const sizes = fc.record({
      cols: fc.integer({ min: 1, max: 240 }),
      rows: fc.integer({ min: 1, max: 80 }),
    });
    fc.assert(
      fc.property(anyView, sizes, fc.boolean(), (view, size, help) => {
        const grid = drillScreen(view, size, { ...LOOK, help });
        expect([grid.cols, grid.rows]).toEqual([size.cols, size.rows]);
        if (size.cols >= 80 && size.rows >= 24) expect(grid.code.at(-1)).toBe(32);
      }),
    );
  });

  test('without UTF-8 every character is ASCII', () => {
    fc.assert(
      fc.property(anyView, fc.boolean(), (view, help) => {
        const grid = drillScreen(view, SMALL, { ...LOOK, unicode: false, help });
        expect(grid.code.every((code) => code >= 0x20 && code <= 0x7e)).toBe(true);
        const questions = (text: string) => text.split('?').length;
        const unicode = toText(drillScreen(view, SMALL, { ...LOOK, help }));
        expect(questions(toText(grid))).toBe(questions(unicode));
      }),
    );
  });

  test('without colour no cell has one', () => {
    const grid = drillScreen(BRAKING, SMALL, { theme: MONOCHROME_THEME, unicode: true });
    expect(grid.ink.every((ink) => ink === -1)).toBe(true);
    expect(grid.style.some((style) => style === BOLD)).toBe(true);
  });
});

test('a gear that is not known does not run into the error beside it', () => {
  expect(shown({ ...BRAKING, gear: null })).toMatch(/gear not known {2,}error so far 4\.3 % rms/);
});
