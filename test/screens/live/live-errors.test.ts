import { expect, test } from 'vitest';
import type { LiveMeasures } from '../../../src/score/live-measures.ts';
import { fadeWords } from '../../../src/screens/live/fade-words.ts';
import { brakePointText, slowestText } from '../../../src/screens/live/live-errors.ts';
import { placeText, whereText } from '../../../src/screens/live/place-text.ts';
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
