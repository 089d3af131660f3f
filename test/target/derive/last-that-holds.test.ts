import { describe, expect, test } from 'vitest';
import { lastThatHolds } from '../../../src/target/derive/last-that-holds.ts';

const FROM = 3;
const TO = 200;

/** Every answer that there can be, and how often was asked for it. */
function asked(
  last: number,
  guess: number | null,
): { readonly found: number; readonly times: number } {
  let times = 0;
  const holds = (n: number): boolean => {
    times++;
    return n <= last;
  };
  return { found: lastThatHolds(holds, FROM, TO, guess), times };
}

const answers = Array.from({ length: TO - FROM }, (_, i) => FROM + i);

describe('the last number that holds', () => {
  test('is found by halving, with 197 to choose from in 8 questions at most: 2^8 is 256', () => {
    for (const last of answers) {
      const { found, times } = asked(last, null);
      expect(found).toBe(last);
      expect(times).toBeLessThanOrEqual(8);
    }
  });

  test.each([-50, FROM, 4, 90, 199, TO, 1000])('is found from a guess of %d', (guess) => {
    for (const last of answers) expect(asked(last, guess).found).toBe(last);
  });

  test('takes two questions where the guess is right or one too far, and four where it is one short', () => {
    for (const last of answers.slice(2, -3)) {
      expect(asked(last, last).times).toBe(2);
      expect(asked(last, last + 1).times).toBe(2);
      expect(asked(last, last - 1).times).toBe(4);
    }
  });

  test('asks for nothing where there is nothing between', () => {
    const holds = (): boolean => {
      throw new Error('asked');
    };
    expect(lastThatHolds(holds, 7, 8, null)).toBe(7);
    expect(lastThatHolds(holds, 7, 8, 7)).toBe(7);
  });
});
