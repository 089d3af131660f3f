import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addSample,
  averageErrorLevel,
  type Deviation,
  errorLevel,
  NO_DEVIATION,
} from '../../src/score/deviation.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import { braking, FALLS, record, SHAPE, shapeTarget } from './curves.ts';

type Sample = readonly [driver: number, target: number, dtS: number];
const samples = fc.array(
  fc.tuple(
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.double({ min: 0, max: 1, noNaN: true }),
    fc.double({ min: 1e-4, max: 0.02, noNaN: true }),
  ),
  { minLength: 1, maxLength: 100 },
);

const fold = (trace: readonly Sample[], from: Deviation = NO_DEVIATION): Deviation =>
  trace.reduce((sum, [driver, aim, dtS]) => addSample(sum, driver, aim, dtS), from);

describe('deviation', () => {
  test('by hand: 0.1 heavy for 1 s, then 0.2 light for 3 s', () => {
    const sum = fold([
      [0.6, 0.5, 1],
      [0.1, 0.3, 3],
    ]);
    expect(errorLevel(sum)).toBeCloseTo(Math.sqrt((0.01 + 3 * 0.04) / 4), 12);
    expect(averageErrorLevel(sum)).toBeCloseTo((0.1 - 0.6) / 4, 12);
  });

  test('is absent before any time has passed', () => {
    expect(errorLevel(NO_DEVIATION)).toBeNull();
    expect(averageErrorLevel(NO_DEVIATION)).toBeNull();
  });

  test('a stretch cut in two is the same', () => {
    fc.assert(
      fc.property(samples, (trace) => {
        const halves = trace.flatMap(([a, b, dtS]): Sample[] => [
          [a, b, dtS / 2],
          [a, b, dtS / 2],
        ]);
        expect(errorLevel(fold(halves))).toBeCloseTo(errorLevel(fold(trace))!, 12);
      }),
    );
  });

  test('folded live over the release window agrees with the final score', () => {
    const target = shapeTarget(SHAPE);
    const level = braking({ ...SHAPE, holdS: 0.2, releaseS: 1.3, fall: FALLS.straight });
    const outcome = scoreRep(record(level), target);
    let live = NO_DEVIATION;
    for (let i = 0; i <= 1800; i++) {
      const timeS = 0.25 + i / 1000;
      live = addSample(live, level(timeS), target.level.at(timeS), 0.001);
    }
    if (outcome.kind !== 'scored') throw new Error(outcome.reason);
    expect(Math.abs(errorLevel(live)! - outcome.releaseErrorLevel)).toBeLessThan(0.0005);
    expect(Math.abs(averageErrorLevel(live)! - outcome.averageErrorLevel)).toBeLessThan(0.0005);
  });
});
