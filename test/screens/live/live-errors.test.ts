import { expect, test } from 'vitest';
import type { LiveMeasures } from '../../../src/score/live-measures.ts';
import { createGrid } from '../../../src/screens/cell-grid.ts';
import { toText } from '../../../src/screens/grid-text.ts';
import { fadeWords } from '../../../src/screens/live/fade-words.ts';
import { brakePointText, slowestText } from '../../../src/screens/live/live-errors.ts';
import { drawPlaces } from '../../../src/screens/live/place-axis.ts';
import { placeText, whereText } from '../../../src/screens/live/place-text.ts';
import { scaleBetween } from '../../../src/screens/plot-scale.ts';
import { COLOUR_THEME } from '../../../src/screens/theme.ts';
import { APPROACH, MEASURES } from './sample-live.ts';

const measures = (brakePointErrorM: number, slowestSpeedErrorMps: number): LiveMeasures => ({
  ...MEASURES,
  brakePointErrorM,
  slowestSpeedErrorMps,
});

test.each([
  [3.24, '3.2 m late'],
  [-12, '12.0 m early'],
  [0.04, 'on the mark'],
  [-0.04, 'on the mark'],
])('a brake point %d m later than the target reads %s', (metres, text) => {
  expect(brakePointText(measures(metres, 0))).toBe(text);
});

test.each([
  [1.1, '+4 km/h'],
  [-2.5, '-9 km/h'],
  [0.1, '0 km/h'],
  [-0.1, '0 km/h'],
])('%d m/s against the slowest speed reads %s', (mps, text) => {
  expect(slowestText(measures(0, mps))).toBe(text);
});

// an international mile is 1609.344 m: 2.46, -5.59 and 0.22 mph
test.each([
  [1.1, '+2 mph'],
  [-2.5, '-6 mph'],
  [0.1, '0 mph'],
])('%d m/s against the slowest speed reads %s in imperial units', (mps, text) => {
  expect(slowestText(measures(0, mps), 'imperial')).toBe(text);
});

test.each([
  [-61.6, '62 m', '62 m to turn-in'],
  [0, '0 m', '0 m to turn-in'],
  [0.2, '0 m', '0 m past turn-in'],
  [4.8, '+5 m', '5 m past turn-in'],
])('places are counted as boards count them: %d m', (placeM, short, long) => {
  expect(placeText(placeM)).toBe(short);
  expect(whereText(placeM)).toBe(long);
});

// a foot is 0.3048 m: 10.6, 39.4 and 0.1 ft
test.each([
  [3.24, '11 ft late'],
  [-12, '39 ft early'],
  [0.04, 'on the mark'],
])('a brake point %d m later than the target reads %s in imperial units', (metres, text) => {
  expect(brakePointText(measures(metres, 0), 'imperial')).toBe(text);
});

// 202.1, 0.7 and 15.7 ft
test.each([
  [-61.6, '202 ft', '202 ft to turn-in'],
  [0, '0 ft', '0 ft to turn-in'],
  [4.8, '+16 ft', '16 ft past turn-in'],
])('places in imperial units are counted in feet: %d m', (placeM, short, long) => {
  expect(placeText(placeM, 'imperial')).toBe(short);
  expect(whereText(placeM, 'imperial')).toBe(long);
});

test('the places below a picture of the road are round in the units they are told in', () => {
  const labels = (units: 'metric' | 'imperial', fromM: number, toM: number): readonly string[] => {
    const grid = createGrid({ cols: 72, rows: 4 });
    const area = { x: 1, y: 0, cols: 70, rows: 2 };
    const ends = { from: fromM, to: toM, bottom: 0, top: 1 };
    const look = { theme: COLOUR_THEME, unicode: true, units };
    drawPlaces(grid, area, ends, scaleBetween(ends, area), look);
    return toText(grid).split('\n')[3]!.trim().split(/ {2,}/);
  };
  // a label has eight of 70 columns: 19.4 of 170 m, or 63.7 ft
  expect(labels('metric', -110, 60)).toEqual([
    '100 m',
    '80 m',
    '60 m',
    '40 m',
    '20 m',
    '0 m',
    '+20 m',
    '+40 m',
  ]);
  // 110 m are 360.9 ft, 60 m are 196.9 ft
  expect(labels('imperial', -110, 60)).toEqual(['300 ft', '200 ft', '100 ft', '0 ft', '+100 ft']);
});

test('fade is told in newtons where it can be felt', () => {
  const told = (peakForceN: number) =>
    fadeWords({ ...APPROACH, fade: { peakForceN, coldPeakForceN: 470 } });
  expect(told(512.4)).toEqual(['brakes: needs 512 N now, 470 N cold']);
  expect(told(470.3)).toEqual([]);
  // a pound of force is 4.4482 N
  const faded = { ...APPROACH, fade: { peakForceN: 512.4, coldPeakForceN: 470 } };
  expect(fadeWords(faded, 'imperial')).toEqual(['brakes: needs 115 lbf now, 106 lbf cold']);
  expect(fadeWords(APPROACH)).toEqual([]);
});
