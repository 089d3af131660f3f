import { expect, test } from 'vitest';
import { tonightTexts } from '../../src/commands/event-tonight.ts';
import type { CornerTonight } from '../../src/consistency/tonight/tonight-words.ts';

const corner: CornerTonight = {
  form: {
    name: 'A',
    hiddenReps: 12,
    releaseErrorLevel: 0.06,
    spreadLevel: 0.02,
    spreadReps: 12,
    firstOfDayLossLevel: null,
    firstOfDayReps: 0,
    lastDay: '2026-11-27',
    expectedErrorLevel: 0.08,
  },
  troubles: [],
  cause: null,
  newestReps: 0,
  timeLostS: null,
};

test('where no corner can be ranked yet, the last paragraph is how to go on', () => {
  const none = tonightTexts({ tonight: [], notRanked: [corner] }, '2026-11-27');
  expect(none.at(-1)).toContain('`ebbline drill --corner CORNER --car CAR`');
  const one = { corner, tiedWith: null };
  const some = tonightTexts({ tonight: [one], notRanked: [corner] }, '2026-11-27');
  expect(some.join()).not.toContain('ebbline drill');
});
