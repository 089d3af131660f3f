import { expect, test } from 'vitest';
import { asciiFallback } from '../../../src/screens/ascii-fallback.ts';
import { createGrid, type Size } from '../../../src/screens/cell-grid.ts';
import { toText } from '../../../src/screens/grid-text.ts';
import { drawGg, type GgSubject } from '../../../src/screens/grip/gg-picture.ts';
import { ggReading } from '../../../src/screens/grip/gg-reading.ts';
import { ggScale } from '../../../src/screens/grip/gg-scale.ts';
import { MONOCHROME_THEME } from '../../../src/screens/theme.ts';
import { GG, mirrored, OWN, TARGET, trace } from './sample-grip.ts';

const G = 9.80665;
const SMALL = { cols: 53, rows: 14 };

function drawn(subject: GgSubject, size: Size, unicode = true): string {
  const grid = createGrid(size);
  drawGg(grid, { x: 0, y: 0, ...size }, subject, { theme: MONOCHROME_THEME, unicode });
  if (!unicode) asciiFallback(grid);
  return toText(grid);
}

const BOTH_WAYS: GgSubject = {
  ...GG,
  target: trace([
    [-60, -1.8, 0, 1, 0.8],
    [0, -1.2, 0.8, 1, 0.9],
    [20, -0.2, 1.4, 1, 0.9],
    [30, 0.3, -0.2, 0.4, 0.5],
    [50, 0, -1.4, 0.9, 1],
  ]),
  own: [],
};

test.each([
  ['gg-53x14', GG, SMALL, true],
  ['gg-79x20', GG, { cols: 79, rows: 20 }, true],
  ['gg-ascii-53x14', GG, SMALL, false],
  ['gg-block-53x14', { ...GG, own: [TARGET, TARGET, OWN].map(mirrored) }, SMALL, true],
  ['gg-both-ways-79x20', BOTH_WAYS, { cols: 79, rows: 20 }, true],
] as const)('%s', async (name, subject, size, unicode) => {
  await expect(drawn(subject, size, unicode)).toMatchFileSnapshot(`golden/${name}.txt`);
});

test('a g is as many dots along as across, and the car points up: braking is down, left is left', () => {
  const scale = ggScale({ left: 2, right: -1, forward: 0.2, braking: -2 }, { cols: 60, rows: 20 });
  const origin = scale.dotOf(0, 0);
  const braking = scale.dotOf(-G, 0);
  const left = scale.dotOf(0, G);
  expect(braking.y - origin.y).toBeCloseTo(scale.dotsPerG, 9);
  expect(braking.x).toBeCloseTo(origin.x, 9);
  expect(origin.x - left.x).toBeCloseTo(scale.dotsPerG, 9);
  expect(left.y).toBeCloseTo(origin.y, 9);
  // 80 rows of dots less two for 2.2 g, and 120 less two for 3 g: the first is tighter
  expect(scale.dotsPerG).toBeCloseTo(78 / 2.2, 9);
});

test('the reading of a rep: turn-in against the target, and where more is asked than there is', () => {
  expect(ggReading(GG)).toBe(
    'You use 88 % of the grip at turn-in, the target 100 %. More is asked of the front axle than it has, first 12 m after turn-in.',
  );
  expect(ggReading({ target: null, own: [TARGET, trace([[-5, -1, 0, 0.4, 0.7]])] })).toBe(
    'Most: 70 %, rear axle, 5 m before turn-in.',
  );
  // 5 m are 16.4 ft
  expect(
    ggReading({ target: null, own: [TARGET, trace([[-5, -1, 0, 0.4, 0.7]])] }, 'imperial'),
  ).toBe('Most: 70 %, rear axle, 16 ft before turn-in.');
});

test('the reading of a target: which axle limits it, and what it still brakes with beside cornering', () => {
  expect(ggReading({ target: TARGET, own: [] })).toBe(
    'The target uses 100 % of the grip at turn-in. The front axle limits it, the rear axle from 30 m after turn-in. It still brakes with 1.2 g while it corners with 0.8 g.',
  );
  const spared = {
    ...TARGET,
    frontUse: TARGET.frontUse.map((use) => 0.9 * use),
    rearUse: TARGET.rearUse.map((use) => 0.9 * use),
  };
  expect(ggReading({ target: spared, own: [] })).toContain(
    'Most: 90 %, front axle, 60 m before turn-in.',
  );
});
