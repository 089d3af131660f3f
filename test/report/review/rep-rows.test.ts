import { describe, expect, test } from 'vitest';
import type { ReviewedRep } from '../../../src/report/review/practice-review.ts';
import { comparedNumbers, repRow } from '../../../src/report/review/rep-rows.ts';
import type { LiveMeasures } from '../../../src/score/live-measures.ts';
import type { RepScore } from '../../../src/score/rep-score.ts';
import { REPS } from '../../screens/sample-views.ts';

const SCORED: RepScore = {
  ...(REPS[0]!.outcome as RepScore),
  score: 71.4,
  releaseErrorLevel: 0.0421,
  averageErrorLevel: -0.031,
  keyPointErrorsS: {
    startOfRelease: -0.031,
    halfRelease: 0.004,
    finalRelease: 0.126,
    brakeOff: null,
  },
  reapplications: 2,
};

const rep = (change: Partial<ReviewedRep> = {}): ReviewedRep => ({
  number: 4,
  feedback: 'hidden',
  voided: null,
  outcome: SCORED,
  words: 'released 30 ms early',
  call: null,
  selfRating: null,
  isDrawn: true,
  coupling: null,
  ...change,
});

const told = (one: ReviewedRep, units: 'metric' | 'imperial' = 'metric'): Record<string, string> =>
  Object.fromEntries(
    comparedNumbers([one], units).map(({ name, text }) => [name, text(one, units)]),
  );

describe('the short table', () => {
  test('has a row for each rep', () => {
    expect(repRow(rep())).toEqual(['4', 'hidden', '71', '4.2', 'released 30 ms early']);
  });

  test('a void rep and one without braking have no numbers that they do not have', () => {
    const aborted = rep({ voided: 'aborted', outcome: null, words: '' });
    expect(repRow(aborted)).toEqual(['4', 'hidden', '-', '-', 'aborted']);
    const none = { kind: 'no-rep', version: 1, score: 0, reason: 'never braked' } as const;
    const outcome = { ...none, side: null, flags: [] };
    expect(repRow(rep({ outcome, words: 'no braking was seen', call: 'wet' }))).toEqual([
      ...['4', 'hidden', '0', '-'],
      'call: wet; no braking was seen',
    ]);
  });
});

describe('what picked reps are compared by', () => {
  test('late, early, on time and never', () => {
    expect(told(rep())).toMatchObject({
      score: '71',
      'release error, rms': '4.2 %',
      'average error': '-3.1 %',
      'start of release': '30 ms early',
      'half of the release': 'on time',
      'final release': '130 ms late',
      'brake off': 'not reached',
      're-applied': '2',
    });
  });

  test('what no rep has is left out', () => {
    expect(Object.keys(told(rep()))).not.toContain('felt');
    expect(Object.keys(told(rep()))).not.toContain('brake point');
    expect(told(rep({ selfRating: 'early light' }))).toMatchObject({ felt: 'early light' });
  });

  test('the live car adds its places and its speed in the units that were asked for', () => {
    const live = {
      brakePointErrorM: 3.24,
      slowestSpeedErrorMps: -2,
      turnInErrorM: null,
    } as LiveMeasures;
    const one = rep({ outcome: { ...SCORED, live } });
    // 2 m/s are 7.2 km/h and 4.474 mph
    expect(told(one)).toMatchObject({ 'brake point': '+3.2 m', 'slowest speed': '-7.2 km/h' });
    expect(told(one, 'imperial')).toMatchObject({
      // 3.2 m are 10.5 ft
      'brake point': expect.stringMatching(/^\+1[01] ft$/),
      'slowest speed': '-4.5 mph',
    });
    expect(Object.keys(told(one))).not.toContain('turn-in');
  });
});
