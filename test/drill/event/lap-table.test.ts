import { expect, test } from 'vitest';
import { lapRows } from '../../../src/drill/event/lap-table.ts';
import { SUMMARY } from '../../screens/sample-views.ts';

const named = (...names: string[]) =>
  lapRows(names.map((targetName) => ({ targetName, summary: SUMMARY }))).map(([name]) => name);

test('the variant that all corners share is left to the heading', () => {
  expect(named('Kiln, race', 'Coil, race')).toEqual(['Kiln', 'Coil']);
  expect(named('Kiln, race', 'Coil, wet')).toEqual(['Kiln, race', 'Coil, wet']);
  expect(named('Kiln', 'Coil, wet')).toEqual(['Kiln', 'Coil, wet']);
  expect(named()).toEqual([]);
});

test('what is not known is a dash', () => {
  const none = {
    ...SUMMARY,
    reps: 1,
    aborted: 0,
    medianScore: null,
    medianReleaseErrorLevel: null,
    cause: null,
  };
  expect(lapRows([{ targetName: 'Kiln', summary: none }])).toEqual([
    ['Kiln', '1', '-', '-', 'from three reps on'],
  ]);
});

test('a corner that was entered far too fast says so before the release', () => {
  const speedSentence = '19 km/h too fast at the slowest point, 3 of 3 reps';
  const [row] = lapRows([{ targetName: 'Kiln', summary: { ...SUMMARY, speedSentence } }]);
  expect(row?.at(-1)).toBe(speedSentence);
});
