import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseNumber } from '../../../src/trace/log/parse-number.ts';
import '../../seed.ts';

const parsed = (text: string, decimal: '.' | ',' = '.'): number => {
  const bytes = new TextEncoder().encode(`;${text};`);
  return parseNumber(bytes, 1, bytes.length - 1, decimal.charCodeAt(0));
};

test('is the nearest double, as the language reads it', () => {
  fc.assert(
    fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
      expect(parsed(String(value))).toBe(Number(String(value)));
      expect(parsed(String(value).replace('.', ','), ',')).toBe(Number(String(value)));
    }),
  );
});

test.each(['', '-', '.', '1.2.3', '1-', '0x10', 'abc', '1 2', 'Infinity', '1e'])(
  '%j is none',
  (text) => {
    expect(parsed(text)).toBeNaN();
  },
);

test('takes a sign, bare decimals and an exponent', () => {
  expect([parsed('+1.5'), parsed('-.5'), parsed('5.'), parsed('1e-3')]).toEqual([
    1.5, -0.5, 5, 0.001,
  ]);
});
