import { expect, test } from 'vitest';
import { seriesOf } from '../../../src/consistency/weeks/series.ts';
import { aMeasure, repsOf } from '../rep-measures.ts';

test('drivers and targets are kept apart, also where their names run together', () => {
  const all = seriesOf(
    repsOf([
      aMeasure({ driver: 'a', targetId: 'b c' }),
      aMeasure({ driver: 'a b', targetId: 'c' }),
      aMeasure({ driver: 'a', targetId: 'b c' }),
    ]),
  );
  expect(all.map(({ driver, targetId, reps }) => [driver, targetId, [...reps.places]])).toEqual([
    ['a', 'b c', [0, 2]],
    ['a b', 'c', [1]],
  ]);
});
