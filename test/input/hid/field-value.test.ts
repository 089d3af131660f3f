import { describe, expect, test } from 'vitest';
import { fieldValue } from '../../../src/input/hid/field-value.ts';
import { parseDescriptor } from '../../../src/input/hid/parse-descriptor.ts';
import type { ReportField } from '../../../src/input/hid/report-field.ts';
import {
  ARRAY_BOX,
  PACKED_WHEEL,
  SPEC_KEYBOARD,
  TWO_REPORTS,
} from '../../reference/descriptors.ts';

const fieldOf = (bytes: Uint8Array, page: number, id: number): ReportField => {
  const found = parseDescriptor(bytes).fields.find((f) => f.usagePage === page && f.usageId === id);
  return found ?? expect.unreachable(`no usage ${page}:${id}`);
};

describe('a value outside the logical range', () => {
  test('is no value for a hat with the null flag', () => {
    const hat = fieldOf(PACKED_WHEEL, 1, 0x39);
    expect([0, 7, 8, 13].map((count) => fieldValue(hat, count))).toEqual([0, 7, null, null]);
  });
  test('is no value for a hat of 1..8 that rests at 0 without the flag', () => {
    const hat = fieldOf(TWO_REPORTS, 1, 0x39);
    expect([0, 1, 8, 9].map((count) => fieldValue(hat, count))).toEqual([null, 1, 8, null]);
  });
  test('stays what it is for an axis without the flag', () => {
    const brake = fieldOf(TWO_REPORTS, 2, 0xc5);
    expect(fieldValue(brake, -32768)).toBe(-32768);
  });
});

test('a missing count stays missing', () => {
  expect(fieldValue(fieldOf(TWO_REPORTS, 2, 0xc5), null)).toBeNull();
});

describe('an array element', () => {
  test('that names no control has no value', () => {
    const element = fieldOf(ARRAY_BOX, 9, 1);
    expect([0, 1, 5, 12, 13].map((count) => fieldValue(element, count))).toEqual([
      null,
      1,
      5,
      12,
      null,
    ]);
  });
  test('of the keyboard of USB HID 1.11, E.6, has none beyond 101', () => {
    const keys = parseDescriptor(SPEC_KEYBOARD).fields.filter((f) => !f.variable);
    expect(fieldValue(keys[0]!, 101)).toBe(101);
    expect(fieldValue(keys[0]!, 102)).toBeNull();
  });
});
