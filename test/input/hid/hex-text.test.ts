import { describe, expect, test } from 'vitest';
import { hexTextOrBytes, parseHexText } from '../../../src/input/hid/hex-text.ts';
import { Problem } from '../../../src/problem.ts';

const bytes = (text: string): number[] => [...parseHexText(text, 'x')];

describe('hex text', () => {
  test.each([
    ['05 01 a1 FF', [5, 1, 161, 255]],
    ['0501A1ff', [5, 1, 161, 255]],
    ['0x05, 0x01,\n0XA1,0xff', [5, 1, 161, 255]],
    ['05 01 # usage page\r\na1 ff // collection\n', [5, 1, 161, 255]],
    ['\uFEFF# only a remark\n05', [5]],
    ['  \n', []],
    ['', []],
  ])('%j', (text, expected) => expect(bytes(text)).toEqual(expected));

  test.each([
    ['050', 'odd number of hex digits in "050"'],
    ['05 1 02', 'odd number of hex digits in "1"'],
    ['0x', '"0x" is not hex'],
    ['05 0g', '"0g" is not hex'],
    ['\u001b[31mred', '"?[31mred" is not hex'],
  ])('refuses %j', (text, message) => {
    expect(() => bytes(text)).toThrow(Problem);
    expect(() => bytes(text)).toThrow(message);
  });
});

describe('a file of either kind', () => {
  const ascii = (text: string): Uint8Array => new TextEncoder().encode(text);
  test('text', () => expect([...hexTextOrBytes(ascii('05 01\n'), 'x')]).toEqual([5, 1]));
  test('text with a remark beyond ASCII', () =>
    expect([...hexTextOrBytes(ascii('05 01 # 40° links\n'), 'x')]).toEqual([5, 1]));
  test('bytes', () => {
    const raw = Uint8Array.of(0x05, 0x01, 0x09, 0x04, 0xc0);
    expect(hexTextOrBytes(raw, 'x')).toEqual(raw);
  });
});
