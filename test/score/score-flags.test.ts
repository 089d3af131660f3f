import { describe, expect, test } from 'vitest';
import type { ScoreFlag } from '../../src/score/rep-score.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import { braking, type Curve, record, SHAPE, shapeTarget } from './curves.ts';

const target = shapeTarget(SHAPE);
const level = braking(SHAPE);
const flags = (rep: RepRecord): readonly ScoreFlag[] => scoreRep(rep, target).flags;

test('a plain rep has none', () => {
  expect(flags(record(level))).toEqual([]);
});

describe('gap', () => {
  test('marks silence while braking and leaves out the rates', () => {
    const outcome = scoreRep({ ...record(level), gaps: [{ fromS: 1, toS: 1.1 }] }, target);
    expect(outcome).toMatchObject({
      flags: ['gap'],
      rateRatio: null,
      smoothnessDifference: null,
      score: expect.closeTo(100, 6),
    });
  });

  test('does not mark silence before the onset or after the window', () => {
    expect(flags({ ...record(level), gaps: [{ fromS: -0.3, toS: -0.1 }] })).toEqual([]);
    expect(flags({ ...record(level), gaps: [{ fromS: 2.2, toS: 2.4 }] })).toEqual([]);
  });

  test('marks samples that are no numbers', () => {
    const rep = record(level);
    rep.brake.value[700] = Number.NaN;
    expect(flags(rep)).toEqual(['gap']);
  });
});

test('clipped marks more than 50 ms at full scale', () => {
  const full =
    (ms: number): Curve =>
    (t) =>
      t > 0.2 && t < 0.2 + ms / 1000 ? 1 : level(t);
  expect(flags(record(full(60)))).toEqual(['clipped']);
  expect(flags(record(full(40)))).toEqual([]);
});

test('short-baseline marks a record that starts just before the brake', () => {
  expect(flags(record(level, { fromS: -0.1 }))).toEqual(['short-baseline']);
  const outcome = scoreRep(record(level, { fromS: 0 }), target);
  expect(outcome.flags).toEqual(['short-baseline']);
  expect(outcome.score).toBeCloseTo(100, 0);
});

describe('double', () => {
  const tapAt =
    (tapS: number): Curve =>
    (t) =>
      level(t) + 0.3 * Math.exp(-(((t - tapS) / 0.05) ** 2));

  test('marks a second press more than 400 ms after the first', () => {
    expect(flags(record(tapAt(1.98)))).toEqual(['double']);
  });

  test('keeps the first press', () => {
    const first: Curve = (t) => 0.3 * Math.exp(-(((t + 0.7) / 0.05) ** 2));
    const outcome = scoreRep(
      record((t) => first(t) + level(t), { fromS: -1.2 }),
      target,
    );
    expect(outcome.flags).toContain('double');
    expect(outcome.kind === 'scored' && outcome.keyPoints.onsetS).toBeLessThan(-0.7);
  });

  test.each([
    [0.32, []],
    [0.55, ['double']],
  ])('a tap %d s before the rep: a press within 400 ms belongs to it', (earlierS, expected) => {
    const tap: Curve = (t) => 0.3 * Math.exp(-(((t + earlierS) / 0.03) ** 2));
    expect(flags(record((t) => tap(t) + level(t), { fromS: -1.2 }))).toEqual(expected);
  });

  test('is not a re-application that never left the brake', () => {
    expect(flags(record(tapAt(1.2)))).toEqual([]);
  });
});

test('not-released marks pressure that stays above a tenth of the plateau', () => {
  expect(flags(record((t) => Math.max(level(t), t > 0.3 ? 0.1 : 0)))).toEqual(['not-released']);
  expect(flags(record((t) => Math.max(level(t), t > 0.3 ? 0.06 : 0)))).toEqual([]);
});
