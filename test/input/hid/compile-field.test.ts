import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileField } from '../../../src/input/hid/compile-field.ts';
import { Problem } from '../../../src/problem.ts';
import { hex } from '../../reference/hex.ts';
import { packField } from './pack-field.ts';

function read(
  bytes: Uint8Array,
  bitOffset: number,
  bitSize: number,
  signed: boolean = false,
): number | null {
  return compileField({ reportId: 0, bitOffset, bitSize, signed })(bytes, 0, bytes.length);
}

describe('values worked out by hand', () => {
  const wheel = hex('7f 5c ca d4 57 fb 64 35');
  test('a 14-bit axis: 0x5c7f & 0x3fff', () => expect(read(wheel, 0, 14)).toBe(7295));
  test('14 buttons in the bits after it', () => {
    const pressed = Array.from({ length: 14 }, (_, i) => i + 1).filter(
      (button) => read(wheel, 13 + button, 1) === 1,
    );
    expect(pressed).toEqual([1, 4, 6, 9, 10, 13]);
  });
  test('a hat in the high nibble', () => expect(read(wheel, 28, 4)).toBe(13));
  test('whole bytes', () => expect([read(wheel, 40, 8), read(wheel, 48, 8)]).toEqual([251, 100]));

  test('32 bits, unsigned and signed', () => {
    const ones = hex('ff ff ff ff');
    expect(read(ones, 0, 32)).toBe(4294967295);
    expect(read(ones, 0, 32, true)).toBe(-1);
    expect(read(hex('00 00 00 80'), 0, 32, true)).toBe(-2147483648);
  });
  test('32 bits from bit 3 take five bytes', () => {
    expect(read(hex('f8 ff ff ff 07'), 3, 32)).toBe(4294967295);
    expect(read(hex('08 00 00 00 04'), 3, 32, true)).toBe(-2147483647);
  });
  test('16-bit 0x8000 is -32768 when signed', () =>
    expect(read(hex('00 80'), 0, 16, true)).toBe(-32768));
  test('one signed bit is 0 or -1', () =>
    expect([read(hex('02'), 0, 1, true), read(hex('02'), 1, 1, true)]).toEqual([0, -1]));
});

describe('reports inside a batch', () => {
  const bytes = hex('aa bb 07 34 12 ff');
  test('an unnumbered report starts with its data', () => {
    const reader = compileField({ reportId: 0, bitOffset: 0, bitSize: 16, signed: false });
    expect(reader(bytes, 3, 2)).toBe(0x1234);
  });
  test('a numbered report starts with its id', () => {
    const reader = compileField({ reportId: 7, bitOffset: 8, bitSize: 8, signed: false });
    expect(reader(bytes, 2, 3)).toBe(0x12);
  });
  test('another report id gives null', () => {
    const reader = compileField({ reportId: 6, bitOffset: 0, bitSize: 8, signed: false });
    expect(reader(bytes, 2, 3)).toBeNull();
  });
  test('a report that ends inside the field gives null, whatever lies behind it', () => {
    const reader = compileField({ reportId: 7, bitOffset: 4, bitSize: 16, signed: false });
    expect([reader(bytes, 2, 3), reader(bytes, 2, 4)]).toEqual([null, 0xf123]);
    expect(reader(bytes, 2, 0)).toBeNull();
  });
  test('a longer report is fine', () => {
    const reader = compileField({ reportId: 0, bitOffset: 0, bitSize: 8, signed: false });
    expect(reader(bytes, 0, 6)).toBe(0xaa);
  });
});

test.each([
  { bitSize: 0 },
  { bitSize: 33 },
  { bitSize: 1.5 },
  { bitOffset: -1 },
  { bitOffset: Number.NaN },
  { reportId: 256 },
])('refuses %o', (wrong) => {
  const field = { reportId: 0, bitOffset: 0, bitSize: 8, signed: false, ...wrong };
  expect(() => compileField(field)).toThrow(Problem);
});

test.each([10, 14])('%i bits from every bit of a byte', (bitSize) => {
  for (let bitOffset = 0; bitOffset < 8; bitOffset++) {
    const bytes = new Uint8Array(Math.ceil((bitOffset + bitSize) / 8));
    packField(bytes, bitOffset, bitSize, 2 ** (bitSize - 1) + 5);
    expect(read(bytes, bitOffset, bitSize), `bit ${bitOffset}`).toBe(2 ** (bitSize - 1) + 5);
  }
});

const anyField = fc.record({
  reportId: fc.integer({ min: 0, max: 255 }),
  bitOffset: fc.integer({ min: 0, max: 200 }),
  bitSize: fc.integer({ min: 1, max: 32 }),
  signed: fc.boolean(),
});

test('property: what an independent encoder wrote is read back, whatever is around it', () => {
  fc.assert(
    fc.property(
      anyField,
      fc.maxSafeNat(),
      fc.nat(20),
      fc.boolean(),
      (field, random, lead, ones) => {
        const { reportId, bitOffset, bitSize, signed } = field;
        const value = (random % 2 ** bitSize) - (signed ? 2 ** (bitSize - 1) : 0);
        const idBytes = reportId === 0 ? 0 : 1;
        const length = idBytes + Math.ceil((bitOffset + bitSize) / 8);
        const bytes = new Uint8Array(lead + length + 3).fill(ones ? 255 : 0);
        if (idBytes === 1) bytes[lead] = reportId;
        packField(bytes, 8 * (lead + idBytes) + bitOffset, bitSize, value);
        const reader = compileField(field);
        expect(reader(bytes, lead, length)).toBe(value);
        expect(reader(bytes, lead, length - 1)).toBeNull();
      },
    ),
    { numRuns: 2000 },
  );
});
