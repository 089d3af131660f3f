import { describe, expect, test } from 'vitest';
import { fatigue, TIRED_REPS } from '../../../src/drill/plan/fatigue.ts';
import { isHardRep } from '../../../src/drill/plan/hard-rep.ts';
import { gaussian, seededRandom } from '../../../src/drill/seeded-random.ts';

/** Ten errors one hundredth above and below a level: their sum of squares is 10 * 0.01^2. */
const ten = (level: number): number[] =>
  Array.from({ length: 10 }, (_, i) => level + (i % 2 === 0 ? 0.01 : -0.01));

describe('the fatigue limit', () => {
  // s_r^2 = 2 * 0.001 / 18; the limit of ISO 5725-6 for two means of ten is 2.8 s_r / sqrt(10) = 0.0093333.
  test('is the critical difference of two means of ten', () => {
    expect(fatigue([...ten(0.05), ...ten(0.0593)], 2.8)).toBeNull();
    const found = fatigue([...ten(0.05), ...ten(0.0594)], 2.8);
    expect(found?.limitLevel).toBeCloseTo(0.00933333, 8);
    expect(found?.riseLevel).toBeCloseTo(0.0094, 12);
  });

  test('grows with the factor the coach gives', () => {
    expect(fatigue([...ten(0.05), ...ten(0.0594)], 3)).toBeNull();
  });

  test('compares the first ten with the last ten, whatever lies between', () => {
    expect(fatigue([...ten(0.05), ...ten(0.9), ...ten(0.05)], 2.8)).toBeNull();
    expect(fatigue([...ten(0.05), ...ten(0.05), ...ten(0.06)], 2.8)).not.toBeNull();
  });

  test('says nothing of a driver who gets better, or before twenty reps', () => {
    expect(fatigue([...ten(0.08), ...ten(0.05)], 2.8)).toBeNull();
    expect(fatigue([...ten(0.05), ...ten(0.2).slice(1)], 2.8)).toBeNull();
  });

  // 30 and 10 values: s_r^2 = 0.004 / 38, limit 2.8 s_r sqrt(1/60 + 1/20) = 0.0074174.
  test('under a condition compares with earlier reps of that condition', () => {
    const tired = [...ten(0.09), ...ten(0.09), ...ten(0.09)];
    expect(fatigue(ten(0.0974), 2.8, tired)).toBeNull();
    expect(fatigue(ten(0.0975), 2.8, tired)?.limitLevel).toBeCloseTo(0.0074174, 7);
    expect(fatigue(ten(0.2), 2.8, tired.slice(0, 9))).toBeNull();
  });

  // 2.8 is 1.98 standard errors of a difference; with 36 or fewer degrees of freedom that is 2.5 to 3.5 % on one side.
  test('sets fresh reps off in about three of a hundred cases', () => {
    let warned = 0;
    for (let seed = 0; seed < 4000; seed++) {
      const random = seededRandom(seed);
      const errors = Array.from({ length: 40 }, () => 0.05 + 0.01 * gaussian(random));
      if (fatigue(errors, 2.8) !== null) warned++;
    }
    expect(warned / 4000).toBeGreaterThan(0.02);
    expect(warned / 4000).toBeLessThan(0.045);
  });
});

test('asked after each of forty fresh reps, three answers in a row come in about eight of a hundred practices', () => {
  let [once, threeTimes] = [0, 0];
  for (let seed = 0; seed < 2000; seed++) {
    const random = seededRandom(seed);
    const errors: number[] = [];
    let [row, longest] = [0, 0];
    for (let rep = 0; rep < 40; rep++) {
      errors.push(0.05 + 0.01 * gaussian(random));
      row = fatigue(errors, 2.8) === null ? 0 : row + 1;
      longest = Math.max(longest, row);
    }
    if (longest > 0) once++;
    if (longest >= TIRED_REPS) threeTimes++;
  }
  expect(once / 2000).toBeGreaterThan(0.12);
  expect(threeTimes / 2000).toBeGreaterThan(0.055);
  expect(threeTimes / 2000).toBeLessThan(0.1);
});

describe('a hard rep', () => {
  const rep = (...levels: number[]) => ({
    brake: { timeS: Float64Array.from(levels, (_, i) => i), value: Float64Array.from(levels) },
  });

  test('is one whose brake reached the level, however shortly', () => {
    expect(isHardRep(rep(0, 0.6, 0), 0.6)).toBe(true);
    expect(isHardRep(rep(0, 0.59, 0.59), 0.6)).toBe(false);
    expect(isHardRep(rep(), 0.6)).toBe(false);
  });
});
