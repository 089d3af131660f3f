import { expect, test } from 'vitest';
import { asciiFallback } from '../../../src/screens/ascii-fallback.ts';
import { createGrid, type Size } from '../../../src/screens/cell-grid.ts';
import { toText } from '../../../src/screens/grid-text.ts';
import { type CouplingSubject, drawCoupling } from '../../../src/screens/grip/coupling-picture.ts';
import { MONOCHROME_THEME } from '../../../src/screens/theme.ts';
import { OWN_COUPLING, TARGET_COUPLING } from './sample-grip.ts';

const SMALL = { cols: 53, rows: 14 };

function drawn(subject: CouplingSubject, size: Size, unicode = true): string {
  const grid = createGrid(size);
  drawCoupling(grid, { x: 0, y: 0, ...size }, subject, { theme: MONOCHROME_THEME, unicode });
  if (!unicode) asciiFallback(grid);
  return toText(grid);
}

const REP: CouplingSubject = { target: TARGET_COUPLING, own: [OWN_COUPLING] };

test.each([
  ['coupling-53x14', REP, SMALL, true],
  ['coupling-ascii-53x14', REP, SMALL, false],
  ['coupling-target-79x20', { target: TARGET_COUPLING, own: [] }, { cols: 79, rows: 20 }, true],
] as const)('%s', async (name, subject, size, unicode) => {
  await expect(drawn(subject, size, unicode)).toMatchFileSnapshot(`golden/${name}.txt`);
});

test('a right-hander is drawn the same way round, and said to be one', () => {
  const right = (one: typeof OWN_COUPLING): typeof OWN_COUPLING => ({
    ...one,
    steeringDeg: one.steeringDeg.map((angle) => -angle),
  });
  const text = drawn({ target: right(TARGET_COUPLING), own: [right(OWN_COUPLING)] }, SMALL);
  expect(text).toContain('deg right');
  expect(text.replaceAll('right', 'left').replaceAll(/(\d) R/g, '$1 L')).toBe(
    drawn(REP, SMALL).replaceAll('right', 'left'),
  );
});

test('without a wheel and without steering in the target there is nothing to draw', () => {
  expect(drawn({ target: null, own: [] }, SMALL).trim()).toBe('');
});
