import { expect, test } from 'vitest';
import type { BlockSummary } from '../../../src/drill/drill-view.ts';
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
    troubles: [],
  };
  expect(lapRows([{ targetName: 'Kiln', summary: none }])).toEqual([
    ['Kiln', '1', '-', '-', 'from three reps on'],
  ]);
});

test('of what the reps share, what comes first', () => {
  const trouble = (words: string) =>
    ({ part: 'hit', words, change: 'not told here', reps: 4, of: 5 }) as const;
  const cell = (change: Partial<BlockSummary>) =>
    lapRows([{ targetName: 'Kiln', summary: { ...SUMMARY, ...change } }])[0]?.at(-1);
  expect(cell({ troubles: [trouble('too fast'), trouble('too light')] })).toBe('too fast, 4 of 5');
  expect(cell({ troubles: [] })).toBe('nothing to correct');
  expect(cell({ troubles: [], cause: null })).toBe('none shared by three');
});
