import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createRaster, type DotRaster, setDot } from '../../src/screens/dot-raster.ts';
import { ownRaster } from '../../src/screens/own-raster.ts';
import { plotScale } from '../../src/screens/plot-scale.ts';
import { finalReleaseWindow, isTooCoarse, targetWindow } from '../../src/screens/plot-window.ts';
import { corridorRaster, targetRaster } from '../../src/screens/target-raster.ts';
import type { Track } from '../../src/trace/track.ts';
import { HAIRPIN } from './sample-views.ts';

/** One dot per 0.1 s across and per 10 % down: 1 s and 110 % in 5 by 3 cells, less the lowest dot row. */
const WINDOW = { fromS: 0, toS: 1, topLevel: 1.1 };
const SIZE = { cols: 5, rows: 3 };
const SCALE = plotScale(WINDOW, SIZE);

function has(raster: DotRaster, x: number, y: number): boolean {
  const probe = createRaster(raster);
  setDot(probe, x, y);
  return raster.dots.some((dots, cell) => (dots & probe.dots[cell]!) !== 0);
}

function track(samples: readonly (readonly [number, number])[]): Track {
  return {
    timeS: Float64Array.from(samples, ([time]) => time),
    value: Float64Array.from(samples, ([, value]) => value),
  };
}

const heights = (raster: DotRaster, x: number) =>
  Array.from({ length: 12 }, (_, y) => y).filter((y) => has(raster, x, y));

describe('scale', () => {
  test('level 0 is the lowest dot and the top level the highest', () => {
    expect([SCALE.dotY(0), SCALE.dotY(0.5), SCALE.dotY(1.1)]).toEqual([11, 6, 0]);
  });

  test('a time falls in the column that begins before it', () => {
    expect([0, 0.09, 0.1, 0.95].map((time) => SCALE.dotX(time))).toEqual([0, 0, 1, 9]);
  });
});

describe('own trace', () => {
  test('a value holds until the next one and until now, two dots thick', () => {
    const raster = ownRaster(track([[0.2, 0.5]]), SCALE, 0.55);
    expect([0, 1, 2, 4, 5, 6].map((x) => heights(raster, x))).toEqual([
      [],
      [],
      [5, 6],
      [5, 6],
      [5, 6],
      [],
    ]);
  });

  test('a step within a column is a line from one value to the other', () => {
    const samples = track([
      [0, 0],
      [0.35, 0.4],
    ]);
    expect(heights(ownRaster(samples, SCALE, 0.9), 3)).toEqual([7, 8, 9, 10, 11]);
  });

  test('a short spike is never lost between columns', () => {
    const samples = track([
      [0, 0],
      [0.41, 0.9],
      [0.42, 0],
    ]);
    expect(heights(ownRaster(samples, SCALE, 0.9), 4)).toContain(2);
  });

  test('a value before the window holds into it, and one above the picture stays at its edge', () => {
    expect(heights(ownRaster(track([[-3, 9]]), SCALE, 0.5), 0)).toEqual([0, 1]);
  });

  test('every level lands within two dots of where it belongs', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (level) => {
        const exact = (1 - level / 1.1) * 11;
        for (const y of heights(ownRaster(track([[0, level]]), SCALE, 0.5), 2))
          expect(Math.abs(y - exact)).toBeLessThanOrEqual(1.5);
      }),
    );
  });

  test('an empty track draws nothing', () => {
    expect(ownRaster(track([]), SCALE, 1).dots.every((dots) => dots === 0)).toBe(true);
  });
});

describe('target', () => {
  const window = targetWindow(HAIRPIN);
  const scale = plotScale(window, { cols: 40, rows: 20 });

  test('full scale is 110 % of its peak', () => {
    expect(window.topLevel).toBeCloseTo(0.88, 12);
  });

  test('at least 1.2 s stand ahead of the now line until the brake is off', () => {
    expect(window.toS - HAIRPIN.marks.brakeOff).toBeGreaterThanOrEqual(1.2);
  });

  test('its line passes through the plateau, and the corridor lies 5 % of the level around it', () => {
    const x = scale.dotX(0.45);
    const line = targetRaster(HAIRPIN, scale);
    const corridor = corridorRaster(HAIRPIN, scale);
    const near = [x, x + 1, x + 2, x + 3];
    // 80 % of 88 % is 1/11 below the top of 80 dots; the edges are at 84 % and 76 %.
    expect(near.some((column) => has(line, column, 7))).toBe(true);
    expect(near.some((column) => has(corridor, column, 4))).toBe(true);
    expect(near.some((column) => has(corridor, column, 11))).toBe(true);
  });
});

describe('zoom', () => {
  test('is needed where a row is taller than the corridor of plus and minus 1.5 %', () => {
    // 88 % in 29 rows is 3.03 % a row, in 30 rows 2.93 %.
    expect([isTooCoarse(HAIRPIN, 29), isTooCoarse(HAIRPIN, 30)]).toEqual([true, false]);
  });

  test('shows the last tenth of the plateau and the brake off', () => {
    const { fromS, toS, topLevel } = finalReleaseWindow(HAIRPIN);
    expect([fromS < 2.3, toS > 2.6, topLevel > 0.08]).toEqual([true, true, true]);
    expect(isTooCoarse(HAIRPIN, 11) && topLevel / 11 < 0.03).toBe(true);
  });
});
