import { describe, expect, test } from 'vitest';
import type { RepMeasure } from '../../../src/consistency/rep-measure.ts';
import { cornerForm } from '../../../src/consistency/tonight/corner-form.ts';
import { aMeasure, aVoid, someNumbers, times } from '../rep-measures.ts';

/** Hidden reps of one practice with these release errors; the average errors alternate around 0 by `swing`. */
const hidden = (errors: readonly number[], swing = 0.02, practiceId = 1): RepMeasure[] =>
  errors.map((releaseErrorLevel, i) =>
    aMeasure({
      practiceId,
      feedback: 'hidden',
      numbers: someNumbers({ releaseErrorLevel, averageErrorLevel: i % 2 === 0 ? swing : -swing }),
    }),
  );
const firstOfDay = (errors: readonly number[]): RepMeasure[] =>
  errors.map((releaseErrorLevel) =>
    aMeasure({ feedback: 'first-of-day', numbers: someNumbers({ releaseErrorLevel }) }),
  );
const TEN = times(10, (i) => 0.03 + 0.001 * i);

/**
 * By hand: the median of 0.030 to 0.039 is 0.0345; ten average errors of +-0.02 have squares of 10 * 0.0004 = 0.004
 * over 9 degrees of freedom, a deviation of 0.0210819; five first-of-day reps of 0.05 are 0.0155 worse.
 */
describe('what a first lap is expected to be off by', () => {
  test('release error, spread and first-of-day loss', () => {
    const form = cornerForm('Kiln', [...hidden(TEN), ...firstOfDay(times(5, () => 0.05))]);
    expect(form.releaseErrorLevel).toBeCloseTo(0.0345, 9);
    expect(form.spreadLevel).toBeCloseTo(0.0210819, 7);
    expect(form.firstOfDayLossLevel).toBeCloseTo(0.0155, 9);
    expect(form.expectedErrorLevel).toBeCloseTo(0.0345 + 0.0210819 + 0.0155, 7);
  });

  test('a first-of-day loss that is not known counts for nothing, and is said to be unknown', () => {
    const form = cornerForm('Kiln', [...hidden(TEN), ...firstOfDay(times(4, () => 0.05))]);
    expect(form.firstOfDayLossLevel).toBeNull();
    expect(form.firstOfDayReps).toBe(4);
    expect(form.expectedErrorLevel).toBeCloseTo(0.0345 + 0.0210819, 7);
  });

  test('first-of-day reps that are better are no gain', () => {
    const form = cornerForm('Kiln', [...hidden(TEN), ...firstOfDay(times(5, () => 0.01))]);
    expect(form.firstOfDayLossLevel).toBe(0);
  });

  test('nothing is said of nine hidden reps, or of ten in ten practices', () => {
    expect(cornerForm('Kiln', hidden(TEN.slice(0, 9))).expectedErrorLevel).toBeNull();
    const apart = TEN.flatMap((error, i) => hidden([error], 0.02, i));
    const form = cornerForm('Kiln', apart);
    expect(form).toMatchObject({ hiddenReps: 10, spreadReps: 0, expectedErrorLevel: null });
  });

  test('shown and warm-up reps say nothing; void ones are no practice', () => {
    const reps = [
      ...times(12, () => aMeasure({ day: '2026-11-20' })),
      ...hidden(TEN).map((rep) => ({ ...rep, warmUp: true, day: '2026-11-21' })),
      { ...aVoid('aborted'), day: '2026-11-24' },
    ];
    expect(cornerForm('Kiln', reps)).toMatchObject({ hiddenReps: 0, lastDay: '2026-11-21' });
    expect(cornerForm('Kiln', [])).toMatchObject({ lastDay: null, expectedErrorLevel: null });
  });
});
