import { describe, expect, test } from 'vitest';
import { carryOverZone } from '../../../src/drill/plan/carry-over.ts';

const left = (zone: string, lastDay: string | null) => ({ zone, lastDay });
// 2026-11-25 is a Wednesday of week 48; the week began on Monday the 23rd.
const TODAY = '2026-11-25';

describe('the weekly carry-over check', () => {
  test('takes what was left alone for longest', () => {
    expect(
      carryOverZone(
        [left('a', '2026-11-12'), left('b', '2026-10-01'), left('c', '2026-11-02')],
        TODAY,
        null,
      ),
    ).toBe('b');
  });

  test('what was never driven was left alone for longest, the first of them first', () => {
    expect(
      carryOverZone([left('a', '2026-01-01'), left('b', null), left('c', null)], TODAY, null),
    ).toBe('b');
  });

  test('leaves out what was practised this week', () => {
    expect(carryOverZone([left('a', '2026-11-23'), left('b', '2026-11-22')], TODAY, null)).toBe(
      'b',
    );
    expect(carryOverZone([left('a', '2026-11-23')], TODAY, null)).toBeNull();
  });

  test('comes once a week', () => {
    const candidates = [left('a', '2026-01-01')];
    expect(carryOverZone(candidates, TODAY, '2026-11-23')).toBeNull();
    expect(carryOverZone(candidates, TODAY, '2026-11-22')).toBe('a');
  });

  // ISO 8601: 2024-12-30 and 2025-01-01 lie in week 1 of 2025.
  test('weeks go across the year', () => {
    expect(carryOverZone([left('a', '2024-12-30')], '2025-01-01', null)).toBeNull();
    expect(carryOverZone([left('a', '2024-12-29')], '2025-01-01', null)).toBe('a');
  });
});
