import { describe, expect, test } from 'vitest';
import { readSelfRating, selfRatingText } from '../../src/drill/self-rating.ts';
import { viewOf } from '../../src/drill/view-of.ts';
import { type Fed, feed, fresh, press, RAMP, type Script, START_S } from './drill-rig.ts';

const good: Script = { brake: (t) => RAMP.level.at(t - START_S) };
/** The rep is over and its result held back. */
const HELD_S = START_S + 2.5;

const driven = (asksRating: boolean, toS = HELD_S): Fed =>
  feed(fresh({ asksRating }), good, { fromS: 0, toS });
const ratings = ({ effects }: Fed) => effects.filter(({ kind }) => kind === 'rate');

describe('a driver who rates', () => {
  test('is asked for timing, then for amount, and both go to the history', () => {
    const asked = driven(true);
    expect(viewOf(asked.model)).toMatchObject({ phase: 'result', result: null });
    expect(viewOf(asked.model).rating).toEqual({ timing: null, amount: null });
    const half = press(asked, 'high');
    expect(viewOf(half.model).rating).toEqual({ timing: 'late', amount: null });
    expect(ratings(half)).toEqual([]);
    const whole = press(half, 'low');
    expect(ratings(whole)).toEqual([
      { kind: 'rate', rep: 1, rating: { timing: 'late', amount: 'light' } },
    ]);
    expect(whole.model.block.done[0]?.rating).toEqual({ timing: 'late', amount: 'light' });
    // a third key changes nothing
    expect(ratings(press(whole, 'high'))).toHaveLength(1);
  });

  test('has four seconds: once the result is there nothing can be said', () => {
    const later = feed(driven(true).model, good, { fromS: HELD_S, toS: START_S + 2 + 4.1 });
    expect(viewOf(later.model)).toMatchObject({ rating: null, phase: 'result' });
    expect(viewOf(later.model).result).not.toBeNull();
    expect(ratings(press(later, 'low', 'low'))).toEqual([]);
    const earlier = feed(driven(true).model, good, { fromS: HELD_S, toS: START_S + 2 + 3.9 });
    expect(viewOf(earlier.model).result).toBeNull();
  });

  test('who says nothing, or half, loses nothing', () => {
    const half = press(driven(true), 'middle');
    const next = feed(half.model, good, { fromS: HELD_S, toS: HELD_S + 12 });
    expect(ratings(next)).toEqual([]);
    expect(next.model.block.done[0]?.rating).toBeNull();
    expect(viewOf(next.model).rating).toBeNull();
  });

  test('during a rep the keys do nothing', () => {
    const under = driven(true, START_S + 0.5);
    expect(press(under, 'low', 'high').model).toEqual(under.model);
  });
});

/** The rep is over two seconds after the start of braking, its result held back for 2.5 s, shown for 2.5, rest 5. */
describe('a result that waits for the rating', () => {
  const END_S = START_S + 2;
  const waiting = (toS: number): Fed =>
    feed(fresh({ asksRating: true, ratingWaitS: 60 }), good, { fromS: 0, toS });
  const later = (fed: Fed, fromS: number, toS: number) =>
    viewOf(feed(fed.model, good, { fromS, toS }).model);

  test('is there after a minute without an answer, and not sooner', () => {
    const long = waiting(END_S + 59);
    expect(viewOf(long.model)).toMatchObject({ phase: 'result', result: null });
    expect(viewOf(long.model).rating).toEqual({ timing: null, amount: null });
    expect(later(long, END_S + 59, END_S + 60.5).result).not.toBeNull();
    expect(later(long, END_S + 59, END_S + 64).phase).toBe('rest');
  });

  test('takes an answer after half a minute, and comes then', () => {
    const asked = waiting(END_S + 30);
    const answered = press(asked, 'low', 'high');
    expect(ratings(answered)).toEqual([
      { kind: 'rate', rep: 1, rating: { timing: 'early', amount: 'heavy' } },
    ]);
    expect(viewOf(answered.model).rating).toEqual({ timing: 'early', amount: 'heavy' });
    expect(later(answered, END_S + 30, END_S + 30.4).result).toBeNull();
    expect(later(answered, END_S + 30, END_S + 30.6).result).not.toBeNull();
    expect(later(answered, END_S + 30, END_S + 32.9).phase).toBe('result');
    expect(later(answered, END_S + 30, END_S + 33.1)).toMatchObject({ phase: 'rest' });
    expect(later(answered, END_S + 30, END_S + 38.1).phase).not.toBe('rest');
  });

  test('is held back as long as any other after a quick answer', () => {
    const answered = press(waiting(END_S + 1), 'low', 'high');
    expect(later(answered, END_S + 1, END_S + 2.4).result).toBeNull();
    expect(later(answered, END_S + 1, END_S + 2.6).result).not.toBeNull();
  });

  test('comes at once with Enter, which answers nothing; the second Enter goes on', () => {
    const asked = press(waiting(END_S + 3), 'low');
    const left = press(asked, 'next');
    expect(viewOf(left.model)).toMatchObject({ phase: 'result', rating: null });
    expect(viewOf(left.model).result).not.toBeNull();
    expect(ratings(left)).toEqual([]);
    expect(viewOf(press(left, 'next').model)).toMatchObject({ phase: 'arming', rep: 2 });
  });

  test.each(['repeat', 'pause', 'finish'] as const)(
    'and %s leave no result behind that comes in the next rep',
    (key) => {
      const gone = press(waiting(END_S + 3), key, ...(key === 'pause' ? [key] : []));
      expect(viewOf(gone.model).lastReps[0]?.outcome).not.toBeNull();
    },
  );

  test('is not waited for once the driver wants no more questions', () => {
    expect(viewOf(press(waiting(END_S + 3), 'self-rating').model).result).not.toBeNull();
  });
});

test('nobody is asked who did not want it; one key turns it on and off', () => {
  const plain = driven(false);
  expect(viewOf(plain.model).rating).toBeNull();
  expect(press(plain, 'low', 'low').model).toEqual(plain.model);
  const wanting = feed(press(fresh1(), 'self-rating').model, good, { fromS: 0, toS: HELD_S });
  expect(viewOf(wanting.model).rating).not.toBeNull();
  const not = press(fresh1(), 'self-rating', 'self-rating');
  expect(not.model.asksRating).toBe(false);
});

const fresh1 = (): Fed => ({ model: fresh(), effects: [] });

test('what the history keeps can be read again, anything else is no rating', () => {
  for (const timing of ['early', 'right', 'late'] as const)
    for (const amount of ['light', 'right', 'heavy'] as const)
      expect(readSelfRating(selfRatingText({ timing, amount }))).toEqual({ timing, amount });
  for (const text of [null, '', 'late', 'heavy late', 'late heavy 3', 'late  heavy'])
    expect(readSelfRating(text)).toBeNull();
});
