import { expect, test } from 'vitest';
import { blockGrid } from '../../../src/drill/diagnosis/block-grid.ts';
import { keptSpread, keptSpreadText } from '../../../src/drill/diagnosis/kept-spread.ts';
import { practiceSpread } from '../../../src/drill/diagnosis/spread-curve.ts';
import { gaussian, seededRandom } from '../../../src/drill/seeded-random.ts';
import { SHAPE, shapeTarget } from '../../score/curves.ts';

const IDS = [4, 7, 9];
const grid = blockGrid(shapeTarget(SHAPE));
const random = seededRandom(3);
const curves = IDS.map(() => grid.target.map((level) => level + 0.02 * gaussian(random)));
const PLACES = grid.target.map((_, i) => -100 + i / 3);

test.each([
  ['over time', null],
  ['over the road', PLACES],
])('a curve %s comes back number for number', (_, placesM) => {
  const curve = practiceSpread('2026-11-25', curves, grid, placesM)!;
  expect(keptSpread(keptSpreadText(curve, IDS), IDS)).toStrictEqual(curve);
});

test('of other reps, of another format, damaged or empty it is none', () => {
  const text = keptSpreadText(practiceSpread('2026-11-25', curves, grid)!, IDS);
  expect(keptSpread(text, [4, 7])).toBeNull();
  expect(keptSpread(text, [4, 79])).toBeNull();
  expect(keptSpread(text.replace('"format":1', '"format":0'), IDS)).toBeNull();
  expect(keptSpread(text.slice(0, -1), IDS)).toBeNull();
  expect(keptSpread('', IDS)).toBeNull();
});
