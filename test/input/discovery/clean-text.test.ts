import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cleanSerial } from '../../../src/input/discovery/clean-serial.ts';
import { cleanText } from '../../../src/input/discovery/clean-text.ts';

describe('a string from a device', () => {
  test.each([
    ['keeps letters of three scripts', 'Pédale Ωμέγα Педаль 3+', 'Pédale Ωμέγα Педаль 3+'],
    ['loses escape sequences', 'P\x1b[2J\x1b]0;title\x07edal', 'P[2J]0;titleedal'],
    ['loses the C1 controls, which terminals obey too', 'P\u009b31medal\u0085', 'P31medal'],
    ['loses line ends and tabs', 'two\r\nlines\t', 'twolines'],
    ['cannot turn the text around', 'a\u202eb\u2066c\u200ed\u061ce', 'abcde'],
    ['has no invisible characters', 'a\u200bb\u00adc\ufeffd\u2060e\u2028f', 'abcdef'],
    ['has no braces, which are markup', '{bold}x{/bold}', '(bold)x(/bold)'],
    ['is one column a character', '踏板 🏎 ｗｉｄｅ e\u0301', '?? ? wide é'],
    ['is trimmed', '  a   b  ', 'a b'],
    ['has no half characters', 'a\ud83cb', 'a?b'],
  ])('%s', (_, raw, clean) => {
    expect(cleanText(raw)).toBe(clean);
  });

  test('is cut', () => {
    expect(cleanText('x'.repeat(500))).toHaveLength(48);
    expect(cleanText('x'.repeat(1e7), 5)).toBe('xxxxx');
    expect(cleanText('ab cd', 3)).toBe('ab');
  });

  test('is harmless whatever it was, and cleaning it again changes nothing', () => {
    const codePoints = fc.array(fc.nat({ max: 0x10ffff }), { maxLength: 100 });
    const nasty = codePoints.map((codes) => String.fromCodePoint(...codes));
    fc.assert(
      fc.property(nasty, (raw) => {
        const clean = cleanText(raw);
        expect(clean).not.toMatch(/[\p{C}\p{M}\p{Zl}\p{Zp}{}]/u);
        expect([...clean].length).toBeLessThanOrEqual(48);
        expect(cleanText(clean)).toBe(clean);
      }),
      { numRuns: 200 },
    );
  });
});

describe('a serial number', () => {
  test.each([
    '',
    undefined,
    '0',
    '0000',
    'FFFFFFFF',
    '12345',
    '123456',
    '0123456789ABCDEF',
    '1234567890',
    'None',
    'n/a',
    'Serial Number',
    ' \u0000 ',
  ])('%j tells no two devices apart', (serial) => {
    expect(cleanSerial(serial)).toBeNull();
  });

  test.each(['A1', '10', '0001', '3F00410029', '1234', '12345679'])('%s may', (serial) => {
    expect(cleanSerial(serial)).toBe(serial);
  });
});
