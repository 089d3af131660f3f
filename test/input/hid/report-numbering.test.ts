import { expect, test } from 'vitest';
import type { ControlRecording } from '../../../src/input/hid/control-recording.ts';
import { possibleNumberings } from '../../../src/input/hid/report-numbering.ts';
import { hex } from '../../reference/hex.ts';

const recordingOf = (
  reports: readonly string[],
  numbered: boolean | null = null,
): ControlRecording => ({
  rest: [],
  moved: reports.map(hex),
  others: [],
  numbered,
  fields: null,
});

test.each([
  ['one first byte: nothing to tell apart', ['01 00', '01 07'], [false]],
  ['zero is no report id', ['00 10', '01 10'], [false]],
  ['few values, one length: data first, ids second', ['01 10', '02 10', '01 11'], [false, true]],
  ['a length for each value settles it', ['01 10', '02 10 20', '01 11'], [true]],
  ['a value with two lengths does not', ['01 10', '02 10 20', '01 11 12'], [false, true]],
  [
    'many values are an axis',
    Array.from({ length: 20 }, (_, i) => `${(10 + i).toString()} 00`),
    [false],
  ],
])('%s', (_name, reports, expected) =>
  expect(possibleNumberings(recordingOf(reports))).toEqual(expected),
);

test('what is known is not guessed', () => {
  expect(possibleNumberings(recordingOf(['01 10', '02 10'], false))).toEqual([false]);
  expect(possibleNumberings(recordingOf(['01 10'], true))).toEqual([true]);
});
