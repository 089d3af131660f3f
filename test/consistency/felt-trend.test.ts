import { expect, test } from 'vitest';
import { feltTrend } from '../../src/consistency/felt-trend.ts';
import { zonedInstant } from '../../src/consistency/zoned-instant.ts';
import { aScore } from '../history/fixtures.ts';

function reps(count: number, utc: string, zone: string, felt: (i: number) => string | null) {
  return Array.from({ length: count }, (_, i) => ({
    at: zonedInstant(Date.parse(utc) + i * 1000, zone),
    feedback: 'hidden' as const,
    selfRating: felt(i),
    outcome: aScore({
      peakError: 0,
      keyPointErrorsS: {
        startOfRelease: i % 2 === 0 ? 0.1 : -0.1,
        halfRelease: 0,
        finalRelease: 0,
        brakeOff: 0,
      },
    }),
  }));
}

const right = (i: number): string => (i % 2 === 0 ? 'late right' : 'early right');
const wrong = (i: number): string => (i % 2 === 0 ? 'early right' : 'late right');

test('one value per week where it was driven, oldest first; a week without ratings is a gap', () => {
  // Sunday evening in London is Monday in Tokyo: 2024-W52 and 2025-W01
  const late = reps(12, '2024-12-29T23:30:00Z', 'Asia/Tokyo', right);
  const early = reps(12, '2024-12-29T23:30:00Z', 'Europe/London', wrong);
  const few = reps(3, '2025-01-14T18:00:00Z', 'Europe/London', right);
  const unrated = reps(12, '2025-01-07T18:00:00Z', 'Europe/London', () => null);
  const weeks = feltTrend([...late, ...few, ...unrated, ...early]);
  expect(weeks.map(({ week, ratings }) => [week, ratings])).toEqual([
    ['2024-W52', 12],
    ['2025-W01', 12],
    ['2025-W03', 3],
  ]);
  expect(weeks[0]?.timing?.kappa).toBeCloseTo(-1, 12);
  expect(weeks[1]?.timing?.kappa).toBeCloseTo(1, 12);
  expect(weeks[2]).toMatchObject({ timing: null, needed: 10 });
});
