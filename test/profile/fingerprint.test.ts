import { expect, test } from 'vitest';
import { fingerprint } from '../../src/profile/fingerprint.ts';

// Test vectors of RFC 9923 (The FNV Non-Cryptographic Hash Algorithm), FNV-1a with 64 bits.
test.each([
  ['', 'cbf29ce484222325'],
  ['a', 'af63dc4c8601ec8c'],
  ['foobar', '85944171f73967e8'],
])('FNV-1a of "%s"', (text, expected) => {
  expect(fingerprint(text)).toBe(expected);
});

test('text beyond ASCII is hashed as UTF-8', () => {
  // U+00E9 is the two bytes C3 A9; worked out with Python's integers.
  expect(fingerprint('\u00e9')).toBe('0ac21707b7181e01');
});
