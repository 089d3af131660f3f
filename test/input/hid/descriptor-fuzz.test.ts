import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { decodeReport } from '../../../src/input/hid/decode-report.ts';
import { readItems } from '../../../src/input/hid/descriptor-item.ts';
import { parseDescriptor } from '../../../src/input/hid/parse-descriptor.ts';
import type { ParsedDescriptor, ReportField } from '../../../src/input/hid/report-field.ts';
import { Problem } from '../../../src/problem.ts';
import { ALL_DESCRIPTORS } from '../../reference/descriptors.ts';

function parseOrProblem(bytes: Uint8Array): ParsedDescriptor | null {
  try {
    return parseDescriptor(bytes);
  } catch (error) {
    expect(error).toBeInstanceOf(Problem);
    return null;
  }
}

function fits({ reportBytes }: ParsedDescriptor, field: ReportField): boolean {
  const { bitOffset, bitSize } = field;
  return (
    bitSize >= 1 &&
    bitSize <= 32 &&
    bitOffset >= 0 &&
    bitOffset + bitSize <= 8 * reportBytes.get(field.reportId)! &&
    field.logicalMin <= field.logicalMax &&
    field.signed === field.logicalMin < 0 &&
    field.usagePage <= 0xffff &&
    field.usageId <= 0xffff &&
    field.arrayUsages.length > 0 === !field.variable
  );
}

function overlapsNext(field: ReportField, next: ReportField | undefined): boolean {
  return next?.reportId === field.reportId && next.bitOffset < field.bitOffset + field.bitSize;
}

/** What holds of every descriptor that was accepted, however it came about. */
function isSound(bytes: Uint8Array, parsed: ParsedDescriptor): void {
  const { fields, reportBytes, usesReportIds, warnings } = parsed;
  expect(fields.filter((field) => !fits(parsed, field))).toEqual([]);
  expect(fields.filter((field, i) => overlapsNext(field, fields[i + 1]))).toEqual([]);
  const numbered = [...reportBytes.keys()].map((id) => id !== 0);
  expect(numbered.every((isNumbered) => isNumbered === usesReportIds)).toBe(true);
  expect(warnings.length).toBeLessThanOrEqual(25);
  // Bounded memory: elements by their limit, everything else by the length of the descriptor.
  expect(fields.length).toBeLessThanOrEqual(12288);
  const lists = new Set(fields.map((field) => field.arrayUsages));
  const ranges = [...lists].reduce((sum, list) => sum + list.length, 0);
  expect(ranges).toBeLessThanOrEqual(bytes.length);
}

function decodes(parsed: ParsedDescriptor, report: Uint8Array): void {
  try {
    const { values } = decodeReport(parsed, report, 'report');
    expect(values).toHaveLength(parsed.fields.length);
    expect(values.every((value) => value === null || Number.isInteger(value))).toBe(true);
  } catch (error) {
    expect(error).toBeInstanceOf(Problem);
  }
}

const anyBytes = fc.uint8Array({ maxLength: 4200, size: 'max' });
const anyReport = fc.uint8Array({ maxLength: 80 });

describe('random bytes', () => {
  test('are read item by item, each further on than the last', () => {
    fc.assert(
      fc.property(anyBytes, (bytes) => {
        const places = [...readItems(bytes, () => undefined)].map((item) => item.at);
        expect(places.length).toBeLessThanOrEqual(bytes.length);
        expect(places.every((at, i) => i === 0 || at > places[i - 1]!)).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });
  test('give a sound descriptor or a Problem', () => {
    fc.assert(
      fc.property(anyBytes, anyReport, (bytes, report) => {
        const parsed = parseOrProblem(bytes);
        if (parsed === null) return;
        isSound(bytes, parsed);
        decodes(parsed, report);
      }),
      { numRuns: 2000 },
    );
  });
});

/** Bytes that items are made of, so that mutations hit more than unknown tags. */
const ITEM_BYTES = [
  0x05, 0x09, 0x0b, 0x14, 0x15, 0x16, 0x19, 0x25, 0x26, 0x27, 0x29, 0x55, 0x65, 0x75, 0x81, 0x82,
  0x85, 0x95, 0x96, 0x97, 0xa1, 0xa4, 0xa9, 0xb4, 0xc0, 0xfe, 0x00, 0x01, 0x02, 0x40, 0x7f, 0xff,
] as const;

const mutation = fc.record({
  at: fc.nat(127),
  remove: fc.nat(3),
  insert: fc.array(fc.constantFrom(...ITEM_BYTES), { maxLength: 5 }),
});

test('mutated descriptors of real-looking devices give a sound descriptor or a Problem', () => {
  const anyDevice = fc.constantFrom(...Object.values(ALL_DESCRIPTORS));
  const mutations = fc.array(mutation, { minLength: 1, maxLength: 6 });
  fc.assert(
    fc.property(anyDevice, mutations, anyReport, (device, changes, report) => {
      const bytes = [...device];
      for (const { at, remove, insert } of changes)
        bytes.splice(at % bytes.length, remove, ...insert);
      const mutated = Uint8Array.from(bytes);
      const parsed = parseOrProblem(mutated);
      if (parsed === null) return;
      isSound(mutated, parsed);
      decodes(parsed, report);
    }),
    { numRuns: 2000 },
  );
});

test('every device cut off anywhere gives a sound descriptor or a Problem', () => {
  for (const device of Object.values(ALL_DESCRIPTORS))
    for (let length = 0; length <= device.length; length++) {
      const cut = device.subarray(0, length);
      const parsed = parseOrProblem(cut);
      if (parsed !== null) isSound(cut, parsed);
    }
});

describe('the worst a full descriptor can ask for', () => {
  const repeat = (...pattern: number[]): Uint8Array =>
    Uint8Array.from({ length: 4096 }, (_, i) => pattern[i % pattern.length]!);
  test.each([
    ['usages without end', repeat(0x09, 0x30)],
    ['empty usages', repeat(0x08)],
    ['ranges of a whole page before each array', repeat(0x19, 0x00, 0x2a, 0xff, 0xff, 0x81, 0x00)],
    ['pushes', repeat(0xa4)],
    ['collections', repeat(0xa1, 0x01)],
    ['long items', repeat(0xfe, 0x00, 0xf0)],
    [
      'new report ids',
      Uint8Array.from([
        0x75,
        8,
        0x95,
        1,
        ...Array.from({ length: 1022 }, (_, i) => [0x85, 1 + (i % 255), 0x81, 0x03]).flat(),
      ]),
    ],
    ['as many elements as allowed', Uint8Array.from([0x75, 1, 0x96, 0x00, 0x30, 0x09, 1, 0x81, 2])],
    [
      'a count of four thousand million elements without bits',
      Uint8Array.from([0x75, 0, 0x97, 255, 255, 255, 255, 0x09, 1, 0x81, 2]),
    ],
  ])('%s', (_name, bytes) => {
    const parsed = parseOrProblem(bytes);
    if (parsed !== null) isSound(bytes, parsed);
  });
});
