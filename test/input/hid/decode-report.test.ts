import { describe, expect, test } from 'vitest';
import { decodeReport } from '../../../src/input/hid/decode-report.ts';
import { parseDescriptor } from '../../../src/input/hid/parse-descriptor.ts';
import { Problem } from '../../../src/problem.ts';
import {
  PACKED_WHEEL,
  SPEC_MOUSE,
  THREE_SLIDERS,
  TWO_REPORTS,
} from '../../reference/descriptors.ts';
import { hex } from '../../reference/hex.ts';

const values = (descriptor: Uint8Array, report: string): readonly (number | null)[] =>
  decodeReport(parseDescriptor(descriptor), hex(report), 'report 1').values;

test('a wheel report worked out by hand', () => {
  // 0x5c7f & 0x3fff = 7295; (0xd4ca5c7f >> 14) & 0x3fff = 0x1329 = buttons 1, 4, 6, 9, 10, 13; hat 13 is no direction.
  const buttons = [1, 0, 0, 1, 0, 1, 0, 0, 1, 1, 0, 0, 1, 0];
  expect(values(PACKED_WHEEL, '7f5ccad457fb6435')).toEqual([7295, ...buttons, null, 251, 100]);
});

test('the mouse of USB HID 1.11, E.10: two buttons, left and down', () =>
  expect(values(SPEC_MOUSE, '05 ff 02')).toEqual([1, 0, 1, -1, 2]));

describe('numbered reports', () => {
  test('null in the fields of the other report', () => {
    const found = values(TWO_REPORTS, '02 01 80 ff 7f fe ff');
    expect(found.slice(0, 17)).toEqual(Array(17).fill(null));
    expect(found.slice(17)).toEqual([-32767, 32767, -2]);
    expect(values(TWO_REPORTS, '01 03 80 08').slice(0, 17)).toEqual([
      1, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 8,
    ]);
  });
  test.each([
    ['03 00', 'report id 3 is not described'],
    ['', 'has 0 bytes'],
    ['02 01 80 ff 7f fe', 'has 6 bytes and its fields need 7'],
  ])('%j is refused', (report, message) => {
    expect(() => values(TWO_REPORTS, report)).toThrow(Problem);
    expect(() => values(TWO_REPORTS, report)).toThrow(message);
  });
});

test('a report shorter than its fields names both lengths; padding at the end may be missing', () => {
  expect(() => values(PACKED_WHEEL, '7f5ccad457fb')).toThrow('has 6 bytes and its fields need 7');
  expect(values(PACKED_WHEEL, '7f5ccad457fb64').at(-1)).toBe(100);
});

test('a longer buffer is fine', () =>
  expect(values(THREE_SLIDERS, 'ff 03 00 3f aa bb')).toEqual([1023, 0, 1008]));
