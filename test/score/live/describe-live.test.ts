import { describe, expect, test } from 'vitest';
import { liveJson } from '../../../src/commands/live-json.ts';
import { outcomeJson } from '../../../src/commands/score-json.ts';
import { NARROWEST_BANDS } from '../../../src/score/advice-bands.ts';
import { describeOutcome, faultOf } from '../../../src/score/describe-outcome.ts';
import type { LiveMeasures, ScoredShift } from '../../../src/score/live-measures.ts';
import type { RepScore } from '../../../src/score/rep-score.ts';
import { scoreLiveRun } from '../../../src/score/score-live-rep.ts';
import golden from '../../reference/live-score.json' with { type: 'json' };
import { bareZone, driveByHand, type HandRep, handLevel } from './hand-driven.ts';

const zone = bareZone();

function scored(rep: HandRep): RepScore {
  const fromS = rep.late_m / zone.corner.approachSpeedMps;
  const { run, record } = driveByHand(
    zone,
    (sM, timeS) => handLevel(rep, sM, timeS - fromS),
    golden.newtons_per_level,
  );
  return scoreLiveRun(record, run) as RepScore;
}

const perfect = scored(golden.reps['straight release'].rep);

function withLive(live: Partial<LiveMeasures>, change: Partial<RepScore> = {}): RepScore {
  return { ...perfect, ...change, live: { ...perfect.live!, ...live } };
}

const lost = (part: Partial<RepScore['pointsLost']>): Partial<RepScore> => ({
  pointsLost: { release: 0, hit: 0, smooth: 0, brakePoint: 0, ...part },
});

describe('reps of the reference', () => {
  test.each([
    ['straight release', ''],
    // 4.7026 m/s of the reference are 16.9 km/h
    ['late by 10 m', '17 km/h too fast at the slowest point, braked 10 m late'],
    ['early by 10 m', 'braked 10 m early'],
    // 21.5638 m/s are 77.6 km/h
    ['late by 60 m', '78 km/h too fast at the slowest point, braked 60 m late'],
    ['hold', 'the brake was never fully released'],
  ] as const)('%s: %s', (name, sentence) => {
    expect(describeOutcome(scored(golden.reps[name].rep))).toBe(sentence);
  });

  test.each([
    ['released 4 m late', /late$/],
    ['released 4 m early', /early$/],
    ['too quick', /too quick off the brake$/],
    ['too slow', /^\d+ % too slow off the brake$/],
    // 3.2801, -3.6999 and 9.4043 m/s are 11.8, 13.3 and 33.9 km/h
    ['6 % light', /^12 km\/h too fast at the slowest point, \d+ % too light/],
    ['6 % heavy', /^13 km\/h too slow at the slowest point, hit 6 % too hard$/],
    ['dump', /^34 km\/h too fast at the slowest point, released in a step/],
  ] as const)('%s', (name, sentence) => {
    expect(describeOutcome(scored(golden.reps[name].rep))).toMatch(sentence);
  });
});

const SHIFT: ScoredShift = {
  fromGear: 3,
  toGear: 2,
  atM: -30,
  earliestM: -22,
  verdict: 'safe',
  rpm: 7000,
};
const LOCKED = {
  kind: 'lock-up',
  axle: 'front',
  fromM: -42.3,
  fromS: 1,
  toM: -10,
  toS: 2,
} as const;

describe('what the live car tells', () => {
  test.each([
    ['a safe shift', { shifts: [SHIFT] }, ''],
    [
      'an over-rev',
      { shifts: [{ ...SHIFT, verdict: 'over-rev' }] },
      'over-revved in gear 2: 8 m later is safe',
    ],
    [
      'an early shift',
      { shifts: [{ ...SHIFT, verdict: 'too early' }] },
      'down to gear 2 too early, the rear let go: 8 m later is safe',
    ],
    [
      'no safe place',
      { shifts: [{ ...SHIFT, verdict: 'over-rev', earliestM: null }] },
      'over-revved in gear 2',
    ],
    ['a late shift', { shifts: [{ ...SHIFT, verdict: 'late' }] }, 'down to gear 2 late'],
    ['a missing shift', { missedDownshifts: 1 }, '1 downshift missing'],
    ['two missing shifts', { missedDownshifts: 2 }, '2 downshifts missing'],
    // 5 m/s are 18 km/h.
    [
      'a fast corner',
      { slowestSpeedMps: 30, slowestSpeedErrorMps: 5 },
      '18 km/h too fast at the slowest point',
    ],
    [
      'a slow corner',
      { slowestSpeedMps: 20, slowestSpeedErrorMps: -5 },
      '18 km/h too slow at the slowest point',
    ],
    [
      'a late shift and a speed that is a little off',
      { shifts: [{ ...SHIFT, verdict: 'late' }], slowestSpeedMps: 30, slowestSpeedErrorMps: 2 },
      'down to gear 2 late',
    ],
    [
      'a late shift and a corner the car would have run wide of',
      { shifts: [{ ...SHIFT, verdict: 'late' }], slowestSpeedMps: 30, slowestSpeedErrorMps: 5 },
      '18 km/h too fast at the slowest point, down to gear 2 late',
    ],
    // Within 0.05 s a brake point costs no points.
    [
      'a fast corner, braked a little late',
      {
        slowestSpeedMps: 30,
        slowestSpeedErrorMps: 5,
        brakePointErrorM: 3.2,
        brakePointErrorS: 0.04,
      },
      '18 km/h too fast at the slowest point, braked 3 m late',
    ],
    [
      'a fast corner, braked early',
      {
        slowestSpeedMps: 30,
        slowestSpeedErrorMps: 5,
        brakePointErrorM: -3.2,
        brakePointErrorS: -0.04,
      },
      '18 km/h too fast at the slowest point',
    ],
    ['nearly the speed', { slowestSpeedMps: 30, slowestSpeedErrorMps: 1 }, ''],
  ] as const)('%s', (_, live, sentence) => {
    expect(describeOutcome(withLive(live as Partial<LiveMeasures>))).toBe(sentence);
  });

  // 5 m/s are 11.18 mph.
  test('speeds in miles per hour where asked', () => {
    const fast = withLive({ slowestSpeedMps: 30, slowestSpeedErrorMps: 5 });
    expect(describeOutcome(fast, undefined, 'imperial')).toBe(
      '11 mph too fast at the slowest point',
    );
  });

  const LATE_RELEASE = {
    ...lost({ release: 30 }),
    cause: { kind: 'timing', timingS: 0.1, rateRatio: 1, amountRatio: 1, explained: 0.9 },
  } as const;
  const EARLY_RELEASE = { ...LATE_RELEASE, cause: { ...LATE_RELEASE.cause, timingS: -0.1 } };
  const fast = (share: number) => ({
    slowestSpeedMps: 25 * (1 + share),
    slowestSpeedErrorMps: 25 * share,
  });

  describe('a corner entered far too fast or too slow comes before details of the release', () => {
    // 25 m/s are 90 km/h: a tenth is 9 km/h.
    test.each([
      [0.3, EARLY_RELEASE, '27 km/h too fast at the slowest point, released 100 ms early'],
      [0.3, LATE_RELEASE, '27 km/h too fast at the slowest point'],
      [-0.3, LATE_RELEASE, '27 km/h too slow at the slowest point, released 100 ms late'],
      [-0.3, EARLY_RELEASE, '27 km/h too slow at the slowest point'],
      [0.11, EARLY_RELEASE, '10 km/h too fast at the slowest point, released 100 ms early'],
      [0.09, EARLY_RELEASE, 'released 100 ms early'],
      [-0.09, LATE_RELEASE, 'released 100 ms late'],
    ] as const)('by %d', (share, change, words) => {
      expect(describeOutcome(withLive(fast(share), change))).toBe(words);
    });

    test('unless the driver’s own speeds differ by more', () => {
      const rep = withLive(fast(0.18), EARLY_RELEASE);
      const wide = { ...NARROWEST_BANDS, slowestSpeed: 0.2 };
      expect(describeOutcome(rep, wide)).toBe('released 100 ms early');
      expect(describeOutcome(withLive(fast(0.18)), wide)).toBe('');
      expect(describeOutcome(withLive(fast(0.22)), wide)).toMatch(/^20 km\/h too fast/);
    });

    test('but behind what is no detail: a brake never released, an over-rev', () => {
      const held = { ...LATE_RELEASE, flags: ['not-released'] } as const;
      expect(describeOutcome(withLive(fast(-0.5), held))).toMatch(/never fully released$/);
      const shifts = [{ ...SHIFT, verdict: 'over-rev' as const }];
      expect(describeOutcome(withLive({ ...fast(0.3), shifts }))).toMatch(/^over-revved/);
    });

    test('in large words as well', () => {
      expect(faultOf(withLive(fast(0.3), EARLY_RELEASE))?.glance).toEqual(['too', 'fast']);
    });
  });

  test('locked wheels, where they were the worst of the smooth part', () => {
    const parts = { release: 1, hit: 1, smooth: 0.3, brakePoint: 1 };
    const live = { lockUps: [LOCKED], lockedS: 0.6 };
    const words = 'front wheels locked 42 m before turn-in: ease, re-apply, carry on';
    expect(describeOutcome(withLive(live, { ...lost({ smooth: 20 }), parts }))).toBe(words);
    const step = { ...lost({ smooth: 20 }), parts: { ...parts, smooth: 0.2 }, rateRatio: 5.2 };
    expect(describeOutcome(withLive({ ...live, lockedS: 0.1 }, step))).toMatch(/in a step/);
  });

  test('anti-lock after turn-in', () => {
    const parts = { release: 1, hit: 1, smooth: 0.2, brakePoint: 1 };
    const rep = withLive({ antiLockTurnedS: 1 }, { ...lost({ smooth: 20 }), parts });
    expect(describeOutcome(rep)).toBe('anti-lock still at work after turn-in: be out of it before');
  });

  test('what cost most comes first, an over-rev before small faults', () => {
    const shifts = [{ ...SHIFT, verdict: 'over-rev' as const }];
    const braked = { shifts, brakePointErrorM: 9.6 };
    expect(describeOutcome(withLive(braked, lost({ brakePoint: 4 })))).toMatch(/^over-revved/);
    expect(describeOutcome(withLive(braked, lost({ brakePoint: 8 })))).toBe('braked 10 m late');
  });

  test('a score from before the live car says nothing of it', () => {
    const { live: _, ...before } = perfect;
    expect(describeOutcome(before as RepScore)).toBe('');
  });
});

describe('JSON', () => {
  test('has the live measures and the fourth part, with units in their names', () => {
    const rep = withLive({ shifts: [SHIFT], lockUps: [LOCKED] });
    const json = JSON.parse(JSON.stringify(outcomeJson(rep)));
    expect(json).toMatchObject({
      score_version: 2,
      brake_point_share: 1,
      brake_point_lost_points: 0,
    });
    expect(json.live).toMatchObject({
      lock_ups: [{ axle: 'front', from_m: -42.3, to_m: -10, from_s: 1, to_s: 2 }],
      shifts: [{ from_gear: 3, to_gear: 2, at_m: -30, earliest_m: -22, engine_rpm: 7000 }],
      turn_in_error_m: null,
    });
    expect(Object.keys(liveJson(rep.live!))).toHaveLength(Object.keys(rep.live!).length);
  });

  test('a score of version 1 has neither', () => {
    const { brakePoint: _, ...parts } = perfect.parts;
    const { brakePoint: __, ...pointsLost } = perfect.pointsLost;
    const json = outcomeJson({ ...perfect, version: 1, live: null, parts, pointsLost });
    expect(json).toMatchObject({
      live: null,
      brake_point_share: null,
      brake_point_lost_points: null,
    });
  });
});
