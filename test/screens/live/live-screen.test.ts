import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DrillView } from '../../../src/drill/drill-view.ts';
import { drillScreen } from '../../../src/screens/drill-screen.ts';
import { toText } from '../../../src/screens/grid-text.ts';
import { COLOUR_THEME, MONOCHROME_THEME } from '../../../src/screens/theme.ts';
import { EVENTS, inZone, LIVE_VIEWS, OWN_LEVEL, until, withLive } from './sample-live.ts';

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

  test('help', async () => {
    const text = `${toText(drillScreen(LIVE_VIEWS.zone!, size, { ...LOOK, help: true }))}\n`;
    await expect(text).toMatchFileSnapshot(name('help'));
  });

  test.each(['approach', 'zone', 'rest', 'rest-gg', 'rest-coupling'])(
    '%s in ASCII',
    async (state) => {
      const look = { ...LOOK, unicode: false };
      const text = `${toText(drillScreen(LIVE_VIEWS[state]!, size, look))}\n`;
      await expect(text).toMatchFileSnapshot(name(`${state}-ascii`));
    },
  );
});

test.each(Object.entries(LIVE_VIEWS))('%s in imperial units has no km/h', (_, view) => {
  // the sentences of reps are made with their units before
  const inMetric = /[\d ]\d+ km\/h(?! too)/;
  const wide = SIZES[1]!;
  const metric = toText(drillScreen(view, wide, LOOK));
  const imperial = toText(drillScreen(view, wide, { ...LOOK, units: 'imperial' }));
  expect(imperial).not.toMatch(inMetric);
  expect(/\d mph/.test(imperial)).toBe(inMetric.test(metric));
});

const SMALL = SIZES[0]!;
const shown = (view: DrillView): string => toText(drillScreen(view, SMALL, LOOK));

describe('what is shown when', () => {
  test.each(['hidden', 'first-of-day'] as const)(
    'a %s rep gives nothing away of pedal, wheel and car',
    (feedback) => {
      for (const stage of ['approach', 'zone'] as const) {
        const zone = { ...inZone(-20), stage, events: [], frontUse: null, rearUse: null };
        const still = withLive({ ...zone, level: { ...zone.level, own: null } }, { feedback });
        const pressed = withLive(
          {
            ...zone,
            level: { ...zone.level, own: until(OWN_LEVEL, -20) },
            events: EVENTS,
            frontUse: 1.3,
            rearUse: 0.9,
            locked: 'front',
            gear: 2,
            rpm: 8600,
          },
          { feedback, brakeLevel: 0.9 },
        );
        expect(shown(pressed)).toBe(shown(still));
      }
    },
  );

  test('a hidden rep shows target and place', () => {
    const text = shown(LIVE_VIEWS['zone-hidden']!);
    expect(text).toMatch(/target .* corridor/);
    expect(text).toContain('15 m past turn-in');
    expect(text).not.toMatch(/speed|gear|revs|grip|━━ you/);
  });

  test('locked wheels are named and the way out is told', () => {
    const text = shown(LIVE_VIEWS['zone-locked']!);
    expect(text).toContain('Locked, front: ease, re-apply, carry on.');
    expect(text).toContain('front locked');
  });

  test('without a wheel the lane says so', () => {
    expect(shown(LIVE_VIEWS['zone-no-wheel']!)).toContain('no wheel: braking only');
    expect(shown(LIVE_VIEWS.zone!)).not.toContain('no wheel');
  });

  test('the result names score, parts, brake point and slowest speed', () => {
    const text = shown(LIVE_VIEWS.result!);
    for (const part of ['release 58 %', 'hit 91 %', 'smooth 86 %', 'brake point 70 %'])
      expect(text).toContain(part);
    expect(text).toContain('braked 5.2 m late');
    expect(text).toContain('slowest +4 km/h');
    expect(text).toContain('needs 512 N now, 470 N cold');
  });
});

describe('any size', () => {
  const anyView = fc.constantFrom(...Object.values(LIVE_VIEWS));

  test('is filled without an error, and the last cell stays blank', () => {
    const sizes = fc.record({
      cols: fc.integer({ min: 80, max: 240 }),
      rows: fc.integer({ min: 24, max: 80 }),
    });
    fc.assert(
      fc.property(anyView, sizes, fc.boolean(), (view, size, help) => {
        const grid = drillScreen(view, size, { ...LOOK, help });
        expect(grid.code.at(-1)).toBe(32);
      }),
    );
  });

  test('without UTF-8 every character is ASCII and has a look-alike', () => {
    fc.assert(
      fc.property(anyView, fc.boolean(), (view, help) => {
        const grid = drillScreen(view, SMALL, { ...LOOK, unicode: false, help });
        expect(grid.code.every((code) => code >= 0x20 && code <= 0x7e)).toBe(true);
        const questions = (text: string): number => text.split('?').length;
        const unicode = toText(drillScreen(view, SMALL, { ...LOOK, help }));
        expect(questions(toText(grid))).toBe(questions(unicode));
      }),
    );
  });

  test('without colour no cell has one, and the marks keep their shapes', () => {
    for (const view of Object.values(LIVE_VIEWS)) {
      const plain = drillScreen(view, SMALL, { theme: MONOCHROME_THEME, unicode: true });
      expect(plain.ink.every((ink) => ink === -1)).toBe(true);
      expect(toText(plain)).toBe(shown(view));
    }
  });
});
