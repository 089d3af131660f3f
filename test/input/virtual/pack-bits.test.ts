import fc from 'fast-check';
import { expect, test } from 'vitest';
import { compileField } from '../../../src/input/hid/compile-field.ts';
import { packBits } from '../../../src/input/virtual/pack-bits.ts';

test('lays fields least significant bit first (USB HID 1.11, 6.2.3.8)', () => {
  const bytes = new Uint8Array(3);
  packBits(bytes, 0, 0, 12, 0xabc);
  packBits(bytes, 0, 12, 12, 0x123);
  expect([...bytes]).toEqual([0xbc, 0x3a, 0x12]);
});

const field = fc.record({ bitSize: fc.integer({ min: 2, max: 24 }), signed: fc.boolean() });

test('fields side by side are read back by the reader of hardware', () => {
  fc.assert(
    fc.property(fc.nat(20), field, field, fc.nat(), fc.nat(), (bitOffset, a, b, first, second) => {
      const within = ({ bitSize, signed }: typeof a, n: number) =>
        (n % 2 ** bitSize) - (signed ? 2 ** (bitSize - 1) : 0);
      const values = [within(a, first), within(b, second)];
      const places = [bitOffset, bitOffset + a.bitSize];
      const bytes = new Uint8Array(12);
      for (const [i, { bitSize }] of [a, b].entries())
        packBits(bytes, 1, places[i]!, bitSize, values[i]!);
      const read = [a, b].map((of, i) =>
        compileField({ ...of, reportId: 0, bitOffset: 8 + places[i]! })(bytes, 0, 12),
      );
      expect(read).toEqual(values);
    }),
  );
});
