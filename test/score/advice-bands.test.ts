import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { adviceBands, NARROWEST_BANDS } from '../../src/score/advice-bands.ts';
import { describeOutcome } from '../../src/score/describe-outcome.ts';
import type { LiveMeasures } from '../../src/score/live-measures.ts';
import type { RepScore } from '../../src/score/rep-score.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import { record, SHAPE, shapeTarget } from './curves.ts';

const target = shapeTarget(SHAPE);
const perfect = scoreRep(record(target.level.at), target) as RepScore;

/** Reps whose start of release, peak and rise are off by so much, and whose release is longer by so much. */
function rep(off: { lateS?: number; peak?: number; riseS?: number; longer?: number }): RepScore {
  const { lateS = 0, peak = 0, riseS = 0, longer = 0 } = off;
  const { keyPoints } = perfect;
  const targetS = keyPoints.finalReleaseS! - keyPoints.startOfReleaseS!;
  const lengthS = (1 + longer) * targetS;
  return {
    ...perfect,
    peakError: peak,
    riseErrorS: riseS,
    keyPoints: { ...keyPoints, finalReleaseS: keyPoints.startOfReleaseS! + lengthS },
    keyPointErrorsS: {
      ...perfect.keyPointErrorsS,
      startOfRelease: lateS,
      finalRelease: lateS + longer * targetS,
    },
  };
}

/** So many reps, half of them off to one side and half to the other. */
const spread = (count: number, by: (side: number) => Parameters<typeof rep>[0]): RepScore[] =>
  Array.from({ length: count }, (_, i) => rep(by(i % 2 === 0 ? 1 : -1)));

describe('the band of a measure', () => {
  test('is the narrowest without ten reps, and for a driver who is better than it', () => {
    expect(adviceBands([])).toEqual(NARROWEST_BANDS);
    expect(adviceBands(spread(9, (side) => ({ lateS: 0.1 * side })))).toEqual(NARROWEST_BANDS);
    expect(adviceBands(spread(20, (side) => ({ lateS: 0.01 * side })))).toEqual(NARROWEST_BANDS);
  });

  test('is one and a half standard deviations where a fifth of the reps is further out', () => {
    // 14 of 20 in the middle, six 100 ms out: deviation root of 6 * 0.01 / 19
    const reps = [...spread(14, () => ({})), ...spread(6, (side) => ({ lateS: 0.1 * side }))];
    expect(adviceBands(reps).timingS).toBeCloseTo(1.5 * Math.sqrt(0.06 / 19), 12);
  });

  test('shrinks to hold four fifths of the reps where these are nearer', () => {
    // one of 20 is wild; 16 of them are within 50 ms
    const reps = [
      ...Array.from({ length: 19 }, (_, i) => rep({ lateS: (i + 1) / 320 })),
      rep({ lateS: 0.5 }),
    ];
    expect(adviceBands(reps).timingS).toBeCloseTo(0.05, 12);
  });

  test('does not shrink around a habit: a driver who is always late is told so', () => {
    const reps = spread(20, (side) => ({ lateS: 0.2 + 0.04 * side }));
    expect(adviceBands(reps).timingS).toBeCloseTo(1.5 * 0.04 * Math.sqrt(20 / 19), 12);
  });

  test.each(['peak', 'amount'] as const)('%s goes by the peak', (name) => {
    expect(adviceBands(spread(10, (side) => ({ peak: 0.1 * side })))[name]).toBeCloseTo(0.1, 12);
  });

  test('rate goes by the length of the release, rise by the rise', () => {
    const bands = adviceBands(spread(10, (side) => ({ longer: 0.12 * side, riseS: 0.08 * side })));
    expect(bands.rate).toBeCloseTo(0.12, 12);
    expect(bands.riseS).toBeCloseTo(0.08, 12);
    expect(bands.timingS).toBe(NARROWEST_BANDS.timingS);
  });

  test('the speed at the slowest point goes by its share of the target’s, where a car had one', () => {
    const fast = (side: number): RepScore => ({
      ...perfect,
      live: {
        slowestSpeedMps: 20 + 2.4 * side,
        slowestSpeedErrorMps: 2.4 * side,
      } as LiveMeasures,
    });
    // 2.4 of 20 m/s either way are 12 %
    const reps = Array.from({ length: 10 }, (_, i) => fast(i % 2 === 0 ? 1 : -1));
    expect(adviceBands(reps).slowestSpeed).toBeCloseTo(0.12, 12);
    expect(adviceBands(spread(10, () => ({}))).slowestSpeed).toBe(NARROWEST_BANDS.slowestSpeed);
  });

  test('looks at the last twenty reps only', () => {
    const wild = spread(30, (side) => ({ lateS: 0.2 * side }));
    const calm = spread(20, (side) => ({ lateS: 0.04 * side }));
    expect(adviceBands([...wild, ...calm])).toEqual(adviceBands(calm));
  });

  test('never gets narrower when every rep is twice as far out', () => {
    const offs = fc.array(fc.double({ min: -0.3, max: 0.3, noNaN: true }), {
      minLength: 10,
      maxLength: 30,
    });
    fc.assert(
      fc.property(offs, (values) => {
        const at = (factor: number) =>
          adviceBands(values.map((lateS) => rep({ lateS: factor * lateS }))).timingS;
        expect(at(2)).toBeGreaterThanOrEqual(at(1) - 1e-12);
        expect(at(1)).toBeGreaterThanOrEqual(NARROWEST_BANDS.timingS);
      }),
    );
  });
});

test('what is within the driver’s own band is not spoken of', () => {
  const late = scoreRep(
    record((t) => target.level.at(t < 0.3 ? t : Math.max(0.3, t - 0.1))),
    target,
  );
  expect(describeOutcome(late)).toBe('released 100 ms late');
  const wide = { ...NARROWEST_BANDS, timingS: 0.12 };
  expect(describeOutcome(late, wide)).toBe('');
});
