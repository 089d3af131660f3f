import fc from 'fast-check';
import { expect, test } from 'vitest';
import { decodeReport } from '../../../src/input/hid/decode-report.ts';
import { parseDescriptor } from '../../../src/input/hid/parse-descriptor.ts';
import { packField } from './pack-field.ts';

/** A short item, written out by USB HID 1.11, 6.2.2.2: the smallest of 1, 2 or 4 data bytes asked for. */
function item(prefix: number, value: number, bytes: 1 | 2 | 4 = 4): number[] {
  const sizeCode = bytes === 4 ? 3 : bytes;
  const data = Array.from({ length: bytes }, (_, i) =>
    Number(BigInt.asUintN(8, BigInt(value) >> BigInt(8 * i))),
  );
  return [prefix + sizeCode, ...data];
}

interface Block {
  readonly reportId: number;
  readonly bitSize: number;
  readonly count: number;
  readonly signed: boolean;
  readonly padding: number;
  /** One number per element, reduced to what its bits can hold. */
  readonly seeds: readonly number[];
}

const anyBlock = fc.record({
  reportId: fc.integer({ min: 1, max: 4 }),
  bitSize: fc.integer({ min: 2, max: 32 }),
  count: fc.integer({ min: 1, max: 6 }),
  signed: fc.boolean(),
  padding: fc.nat(17),
  seeds: fc.array(fc.maxSafeNat(), { minLength: 6, maxLength: 6 }),
});

function itemsOf(block: Block, numbered: boolean, usage: number): number[] {
  const { bitSize, count, signed, padding } = block;
  const [min, max] = signed
    ? [-(2 ** (bitSize - 1)), 2 ** (bitSize - 1) - 1]
    : [0, 2 ** bitSize - 1];
  return [
    ...(numbered ? item(0x84, block.reportId, 1) : []),
    ...item(0x14, min),
    ...item(0x24, max),
    ...item(0x08, usage, 2),
    ...item(0x74, bitSize, 1),
    ...item(0x94, count, 1),
    ...item(0x80, 0x02, 1),
    ...item(0x74, padding, 1),
    ...item(0x94, 1, 1),
    ...item(0x80, 0x03, 1),
  ];
}

test('property: what is described and packed by hand is decoded', () => {
  const blocks = fc.array(anyBlock, { minLength: 1, maxLength: 8 });
  fc.assert(
    fc.property(blocks, fc.boolean(), fc.boolean(), (layout, numbered, ones) => {
      const items = layout.flatMap((block, i) => itemsOf(block, numbered, 0x30 + i));
      const parsed = parseDescriptor(
        Uint8Array.from([...item(0x04, 1, 1), ...item(0xa0, 1, 1), ...items, 0xc0]),
      );
      const ids = numbered ? [...new Set(layout.map((block) => block.reportId))].sort() : [0];
      const filled = ids.map((id) => fillReport(layout, id, numbered, ones));
      expect(parsed.fields.map((f) => f.usageId)).toEqual(filled.flatMap((f) => f.usages));
      filled.forEach(({ report, values }, i) => {
        const decoded = decodeReport(parsed, report, 'report');
        expect(decoded.reportId).toBe(ids[i]);
        expect(decoded.values.filter((value) => value !== null)).toEqual(values);
        expect(parsed.reportBytes.get(ids[i]!)).toBe(report.length - Number(numbered));
      });
    }),
    { numRuns: 1000 },
  );
});

/** One report of the layout with known values, and either all ones or all zeros wherever nothing was written. */
function fillReport(
  layout: readonly Block[],
  id: number,
  numbered: boolean,
  ones: boolean,
): { report: Uint8Array; values: number[]; usages: number[] } {
  const mine = layout.filter((block) => !numbered || block.reportId === id);
  const bits = mine.reduce((sum, b) => sum + b.bitSize * b.count + b.padding, 0);
  const lead = numbered ? 1 : 0;
  const report = new Uint8Array(lead + Math.ceil(bits / 8)).fill(ones ? 255 : 0);
  if (numbered) report[0] = id;
  const [values, usages]: [number[], number[]] = [[], []];
  let at = 8 * lead;
  for (const block of mine) {
    for (let i = 0; i < block.count; i++, at += block.bitSize) {
      const low = block.signed ? -(2 ** (block.bitSize - 1)) : 0;
      values.push(low + (block.seeds[i]! % 2 ** block.bitSize));
      usages.push(0x30 + layout.indexOf(block));
      packField(report, at, block.bitSize, values.at(-1)!);
    }
    at += block.padding;
  }
  return { report, values, usages };
}
