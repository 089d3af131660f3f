import { describe, expect, test } from 'vitest';
import { parseDescriptor } from '../../../src/input/hid/parse-descriptor.ts';
import type { ParsedDescriptor, ReportField } from '../../../src/input/hid/report-field.ts';
import { Problem } from '../../../src/problem.ts';
import * as sample from '../../reference/descriptors.ts';
import { hex } from '../../reference/hex.ts';

const place = (f: ReportField): number[] => [f.reportId, f.bitOffset, f.bitSize];
const usage = (f: ReportField): number[] => [f.usagePage, f.usageId];
const range = (f: ReportField): number[] => [f.logicalMin, f.logicalMax];

/** The items inside one application collection with an 8-bit default field. */
function parse(items: string): ParsedDescriptor {
  return parseDescriptor(hex(`05 01 09 04 A1 01 15 00 26 FF 00 75 08 95 01 ${items} C0`));
}
function only(items: string): ReportField {
  const { fields } = parse(items);
  expect(fields).toHaveLength(1);
  return fields[0]!;
}

describe('examples of USB HID 1.11, appendix E', () => {
  test('the mouse: three buttons, padding, two relative axes of 8 bits', () => {
    const mouse = parseDescriptor(sample.SPEC_MOUSE);
    expect(mouse.fields.map(place)).toEqual([
      [0, 0, 1],
      [0, 1, 1],
      [0, 2, 1],
      [0, 8, 8],
      [0, 16, 8],
    ]);
    expect(mouse.fields.map(usage)).toEqual([
      [9, 1],
      [9, 2],
      [9, 3],
      [1, 0x30],
      [1, 0x31],
    ]);
    expect(mouse.fields.map((f) => f.relative)).toEqual([false, false, false, true, true]);
    expect(range(mouse.fields[3]!)).toEqual([-127, 127]);
    expect(mouse.fields[3]!.signed).toBe(true);
    expect(mouse.usesReportIds).toBe(false);
    expect([...mouse.reportBytes]).toEqual([[0, 3]]);
    expect(mouse.applications).toEqual([0x10002]);
    expect(mouse.warnings).toEqual([]);
  });

  test('the keyboard: eight modifiers, then an array of six; lamps are output', () => {
    const keyboard = parseDescriptor(sample.SPEC_KEYBOARD);
    expect(sample.SPEC_KEYBOARD).toHaveLength(63);
    const modifiers = keyboard.fields.slice(0, 8);
    expect(modifiers.map(usage)).toEqual(
      [0xe0, 0xe1, 0xe2, 0xe3, 0xe4, 0xe5, 0xe6, 0xe7].map((id) => [7, id]),
    );
    const keys = keyboard.fields.slice(8);
    expect(keys.map(place)).toEqual([16, 24, 32, 40, 48, 56].map((bit) => [0, bit, 8]));
    expect(keys.every((key) => !key.variable && key.logicalMax === 101)).toBe(true);
    expect(keys[5]!.arrayUsages).toEqual([{ first: 0x70000, last: 0x70065 }]);
    expect([...keyboard.reportBytes]).toEqual([[0, 8]]);
    expect(keyboard.warnings).toEqual([]);
  });
});

describe('traits of real devices', () => {
  test('a wheel with axis, buttons and hat in one word, and axes of 255 in one byte', () => {
    const { fields, reportBytes } = parseDescriptor(sample.PACKED_WHEEL);
    expect(fields).toHaveLength(18);
    expect(fields.map((f) => f.bitOffset)).toEqual([
      0, 14, 15, 16, 17, 18, 19, 20, 21, 22, 23, 24, 25, 26, 27, 28, 40, 48,
    ]);
    expect(range(fields[0]!)).toEqual([0, 16383]);
    expect(fields[15]).toMatchObject({ usageId: 0x39, nullState: true, unit: 0x14 });
    expect([fields[15]!.physicalMin, fields[15]!.physicalMax]).toEqual([0, 315]);
    expect(fields.slice(16).map(range)).toEqual([
      [0, 255],
      [0, 255],
    ]);
    expect(fields[16]!.unit).toBe(0);
    expect(reportBytes.get(0)).toBe(8);
  });

  test('three axes of one usage stay three; report length rounds up to whole bytes', () => {
    const { fields, reportBytes, warnings } = parseDescriptor(sample.THREE_SLIDERS);
    expect(fields.map(place)).toEqual([
      [0, 0, 10],
      [0, 10, 10],
      [0, 20, 10],
    ]);
    expect(fields.map(usage)).toEqual([
      [1, 0x36],
      [1, 0x36],
      [1, 0x36],
    ]);
    expect(range(fields[0]!)).toEqual([0, 1023]);
    expect(reportBytes.get(0)).toBe(4);
    expect(warnings).toEqual([expect.stringContaining('unknown tag 0')]);
    expect(parse('75 1E 09 30 81 02').reportBytes.get(0)).toBe(4);
  });

  test('two numbered reports, each from bit 0 on', () => {
    const { fields, usesReportIds, reportBytes } = parseDescriptor(sample.TWO_REPORTS);
    expect(usesReportIds).toBe(true);
    expect(fields.filter((f) => f.reportId === 2).map(place)).toEqual([
      [2, 0, 16],
      [2, 16, 16],
      [2, 32, 16],
    ]);
    expect(range(fields.at(-1)!)).toEqual([-32767, 32767]);
    expect(fields[16]).toMatchObject({ usageId: 0x39, logicalMin: 1, logicalMax: 8 });
    expect([...reportBytes]).toEqual([
      [1, 3],
      [2, 6],
    ]);
  });

  test('a range too wide for its bits is cut', () => {
    const { fields, warnings } = parseDescriptor(sample.LEAKING_RANGE);
    expect(fields.slice(0, 2).map(range)).toEqual([
      [0, 65535],
      [0, 65535],
    ]);
    expect(fields.slice(2).map(range)).toEqual(Array(8).fill([0, 1]));
    expect(warnings).toEqual(['the logical range 0..65535 does not fit 1 bits and is cut']);
  });

  test('128 buttons: a count with its top bit set is no negative number', () => {
    const { fields } = parseDescriptor(sample.BUTTON_BOX);
    expect(fields).toHaveLength(128);
    expect(usage(fields[127]!)).toEqual([9, 128]);
  });

  test('push keeps the field state; pop leaves the report id, which is said', () => {
    const { fields, applications, warnings, reportBytes } = parseDescriptor(sample.PUSH_AND_POP);
    expect(fields.map(place)).toEqual([
      [1, 0, 16],
      [1, 16, 8],
      [0x81, 0, 8],
    ]);
    expect(fields[0]).toMatchObject({ unit: 0xe111, unitExponent: 4, physicalMax: 1000 });
    expect(fields[1]).toMatchObject({ usagePage: 1, unit: 0, logicalMin: -127, physicalMax: 127 });
    expect(applications).toEqual([0x10004, 0x10005]);
    expect(reportBytes.get(0x81)).toBe(1);
    expect(warnings).toEqual([]);
    const poppedAcross = parse('A4 85 02 09 30 81 02 B4 09 31 81 02');
    expect(poppedAcross.fields.map(place)).toEqual([
      [2, 0, 8],
      [2, 8, 8],
    ]);
    expect(poppedAcross.warnings).toEqual([expect.stringContaining('report id')]);
  });
});

describe('items', () => {
  test('the size code 3 means four bytes', () =>
    expect(range(only('27 FF FF 01 00 75 20 09 30 81 02'))).toEqual([0, 131071]));
  test('no data means 0', () => expect(range(only('15 05 14 09 30 81 02'))).toEqual([0, 255]));
  test('long items are skipped', () => {
    const { fields, warnings } = parse('FE 03 F0 81 02 C0 09 30 81 02');
    expect(fields.map(usage)).toEqual([[1, 0x30]]);
    expect(warnings).toEqual([expect.stringContaining('long item')]);
  });
  test.each(['26 FF', 'FE', 'FE 05', 'FE 05 F0 01 02'])('a cut-off %s keeps the rest', (end) => {
    const { fields, warnings } = parseDescriptor(
      hex(`A1 01 15 00 25 01 75 01 95 01 05 09 09 01 81 02 ${end}`),
    );
    expect(fields).toHaveLength(1);
    expect(warnings[0]).toContain('cut off');
  });
  test('unknown tags and the reserved type are passed over', () => {
    const { fields, warnings } = parse('C5 01 69 01 0D 01 09 30 81 02');
    expect(fields.map(usage)).toEqual([[1, 0x30]]);
    expect(warnings).toHaveLength(3);
  });
});

describe('ranges', () => {
  test.each([
    ['15 00 25 FF 75 08', [0, 255]],
    ['15 00 26 FF FF 75 10', [0, 65535]],
    ['15 00 27 FF FF FF FF 75 20', [0, 4294967295]],
    ['15 81 25 7F', [-127, 127]],
    ['16 00 80 26 FF 7F 75 10', [-32768, 32767]],
    ['17 00 00 00 80 27 FF FF FF 7F 75 20', [-2147483648, 2147483647]],
    ['15 00 25 C8 75 10', [0, 200]],
    ['14 26 00 80 75 18', [0, 32768]],
    ['25 FF 15 00', [0, 255]],
    ['25 FF 15 80', [-128, -1]],
    ['16 00 80 26 FF 7F', [-128, 127]],
  ])('%s', (items, expected) => expect(range(only(`${items} 09 30 81 02`))).toEqual(expected));

  test('the sign of the value follows the minimum', () => {
    expect(only('15 00 25 FF 09 30 81 02').signed).toBe(false);
    expect(only('15 FF 25 01 09 30 81 02').signed).toBe(true);
  });
  test.each(['15 05 25 04', '15 FF 25 80'])('upside down (%s): every value counts', (items) => {
    const { fields, warnings } = parse(`${items} 09 30 81 02`);
    expect(fields[0]!.logicalMax - fields[0]!.logicalMin).toBe(255);
    expect(warnings).toHaveLength(1);
  });
  test('never given: every value counts', () => {
    const { fields, warnings } = parseDescriptor(hex('A1 01 05 01 09 30 75 0C 95 01 81 02 C0'));
    expect(range(fields[0]!)).toEqual([0, 4095]);
    expect(warnings).toHaveLength(1);
  });
  test('physical: the logical range unless given and not both 0', () => {
    const physical = (items: string): number[] => {
      const { physicalMin, physicalMax } = only(`${items} 09 30 81 02`);
      return [physicalMin, physicalMax];
    };
    expect(physical('')).toEqual([0, 255]);
    expect(physical('35 00 45 00')).toEqual([0, 255]);
    expect(physical('35 00 46 3B 01')).toEqual([0, 315]);
    expect(physical('36 7C FC 46 84 03')).toEqual([-900, 900]);
    expect(physical('35 C9 45 C8')).toEqual([-55, -56]);
  });
  test.each([
    ['55 0E', -2],
    ['55 04', 4],
    ['55 08', -8],
    ['55 FE', -2],
    ['55 10', 16],
    ['54', 0],
  ])('unit exponent %s', (items, exponent) =>
    expect(only(`${items} 09 30 81 02`).unitExponent).toBe(exponent),
  );
  test.each([
    ['65 14', 0x14],
    ['66 11 E1', 0xe111],
    ['67 11 E1 00 80', 0x8000e111],
  ])('unit %s is unsigned', (items, unit) => expect(only(`${items} 09 30 81 02`).unit).toBe(unit));
});

describe('usages', () => {
  const usages = (items: string): number[][] => parse(items).fields.map(usage);

  test('the last one repeats when there are too few', () =>
    expect(usages('95 04 09 30 09 31 81 02').map((u) => u[1])).toEqual([0x30, 0x31, 0x31, 0x31]));
  test('those too many are left out, and do not reach the next item', () =>
    expect(usages('09 30 09 31 81 02 09 35 81 02').map((u) => u[1])).toEqual([0x30, 0x35]));
  test('ranges and single ones mix', () =>
    expect(usages('95 05 09 38 19 30 29 32 09 36 81 02').map((u) => u[1])).toEqual([
      0x38, 0x30, 0x31, 0x32, 0x36,
    ]));
  test('a range may give its end first', () =>
    expect(usages('95 02 29 31 19 30 81 02').map((u) => u[1])).toEqual([0x30, 0x31]));
  test('half a range, or one that runs backwards, is passed over', () => {
    expect(parse('19 30 81 02 09 31 81 02').fields.map(place)).toEqual([[0, 8, 8]]);
    expect(usages('19 31 29 30 09 32 81 02')).toEqual([[1, 0x32]]);
    expect(parse('19 30 81 02').warnings[0]).toContain('only one end');
  });
  test('an extended usage brings its page', () =>
    expect(usages('05 09 95 02 0B C5 00 02 00 09 03 81 02')).toEqual([
      [2, 0xc5],
      [9, 3],
    ]));
  test('an extended range; one that spans pages is passed over', () => {
    expect(usages('95 02 1B 01 00 09 00 2B 02 00 09 00 81 02')).toEqual([
      [9, 1],
      [9, 2],
    ]);
    expect(usages('1B 01 00 09 00 2B 02 00 0A 00 09 30 81 02')).toEqual([[1, 0x30]]);
  });
  test('a usage takes the page in force at its main item (6.2.2.8)', () =>
    expect(usages('09 C5 05 02 81 02')).toEqual([[2, 0xc5]]));
  test('usages of two pages before one main item keep their own, which is said', () => {
    expect(usages('95 02 05 01 09 30 05 02 09 C5 81 02')).toEqual([
      [1, 0x30],
      [2, 0xc5],
    ]);
    expect(parse('95 02 05 01 09 30 05 02 09 C5 81 02').warnings[0]).toContain('several pages');
  });
  test('a usage survives a report id, and the end of a collection clears it', () => {
    expect(parse('09 30 85 F2 81 02').fields.map(place)).toEqual([[0xf2, 0, 8]]);
    expect(parse('A1 02 09 30 C0 81 02').fields).toEqual([]);
    expect(parse('09 30 A1 02 81 02 C0').fields).toEqual([]);
  });
  test('of each delimiter set the first counts', () => {
    expect(usages('95 02 A9 01 09 30 09 31 A9 00 A9 01 09 32 09 33 A9 00 81 02')).toEqual([
      [1, 0x30],
      [1, 0x32],
    ]);
  });
});

describe('padding and flags', () => {
  test('constant and nameless data move the offset and are left out', () =>
    expect(parse('09 30 81 02 09 31 81 03 75 04 81 02 09 32 81 02').fields.map(place)).toEqual([
      [0, 0, 8],
      [0, 20, 4],
    ]));
  test('output and feature items move nothing', () =>
    expect(parse('09 30 81 02 09 31 91 02 09 32 B1 02 09 33 81 02').fields.map(place)).toEqual([
      [0, 0, 8],
      [0, 8, 8],
    ]));
  test('report ids interleave; fields come by id, then by place', () =>
    expect(
      parse('85 02 09 30 81 02 85 01 09 31 81 02 85 02 09 32 81 02').fields.map(place),
    ).toEqual([
      [1, 0, 8],
      [2, 0, 8],
      [2, 8, 8],
    ]));
  test.each([
    ['02', { variable: true, relative: false, nullState: false }],
    ['06', { relative: true }],
    ['0A', { wrap: true }],
    ['12', { nonLinear: true }],
    ['22', { noPreferred: true }],
    ['42', { nullState: true }],
    ['82', { volatile: true }],
  ])('flags %s', (flags, expected) => expect(only(`09 30 81 ${flags}`)).toMatchObject(expected));
  test('buffered bytes wider than a number are left out, which is said', () => {
    const { fields, warnings } = parse('75 40 09 30 82 02 01 75 08 09 31 81 02');
    expect(fields.map(place)).toEqual([[0, 64, 8]]);
    expect(warnings).toEqual([expect.stringContaining('64 bits')]);
  });
  test('an item without bits adds nothing', () => {
    expect(parse('09 30 95 00 81 02 95 01 75 00 09 31 81 02').fields).toEqual([]);
  });
  test('an array element starts the usages it chooses from', () => {
    const { fields } = parseDescriptor(sample.ARRAY_BOX);
    expect(fields.map(usage)).toEqual([
      [9, 1],
      [9, 1],
      [9, 1],
    ]);
    expect(fields[0]!.arrayUsages).toEqual([{ first: 0x90001, last: 0x9000c }]);
  });
});

describe('collections', () => {
  test('an open one and one too many are said', () => {
    expect(parseDescriptor(hex('A1 01')).warnings.join()).toContain('never closed');
    expect(parse('C0 C0').warnings.join()).toContain('not open');
  });
  test('only top-level application collections count', () =>
    expect(
      parseDescriptor(hex('05 01 09 04 A1 01 09 05 A1 01 C0 C0 09 01 A1 00 C0')).applications,
    ).toEqual([0x10004]));
  test('nothing to read is said', () =>
    expect(parse('').warnings).toEqual(['no input data is described']));
});

describe('what cannot be interpreted', () => {
  test.each([
    ['nothing', '', 'empty'],
    ['a pop without a push', 'B4', 'pop without a push'],
    ['more pops than pushes', 'A4 B4 B4', 'pop without a push'],
    ['report id 0', '85 00', 'report id 0'],
    ['a report id above 255', '86 00 01', 'report id 256'],
    ['an id after a report without', '75 08 95 01 81 02 85 01', 'others have none'],
    ['an id after an output report without', '75 08 95 01 91 02 85 01', 'others have none'],
    ['a nested delimiter', 'A9 01 A9 01', 'delimiter'],
    ['a delimiter closed first', 'A9 00', 'delimiter'],
    ['a delimiter open at its main item', 'A9 01 09 30 81 02', 'delimiter'],
    ['a delimiter open at the end', 'A9 01 09 30', 'never closed'],
    ['a giant element', '76 01 01 95 01 81 01', '257 bits'],
    ['a giant count', '75 08 97 FF FF FF FF 81 01', 'longer than'],
    ['65 pushes', 'A4 '.repeat(65), 'pushes'],
  ])('%s', (_name, items, message) => {
    expect(() => parseDescriptor(hex(items))).toThrow(Problem);
    expect(() => parseDescriptor(hex(items))).toThrow(message);
  });
  test('more bytes than a descriptor may have', () => {
    expect(() => parseDescriptor(new Uint8Array(4097))).toThrow('4097 bytes');
    expect(() => parseDescriptor(new Uint8Array(4096))).not.toThrow();
  });
  test('more elements than any device has', () =>
    expect(() => parse('75 01 96 01 30 09 01 81 02')).toThrow('data elements'));
  test('the place is said', () => {
    try {
      parseDescriptor(hex('05 01 B4'));
      expect.unreachable();
    } catch (error) {
      expect((error as Problem).where).toBe('report descriptor, byte 2');
    }
  });
});
