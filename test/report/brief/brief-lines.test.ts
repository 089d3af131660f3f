import { describe, expect, test } from 'vitest';
import { bumpLines } from '../../../src/report/brief/bump-lines.ts';
import { comparableReps } from '../../../src/report/brief/comparable-reps.ts';
import { consistencyLines } from '../../../src/report/brief/consistency-lines.ts';
import { gearLine } from '../../../src/report/brief/gear-lines.ts';
import { targetNumbers } from '../../../src/report/brief/target-numbers.ts';
import { tryFirst } from '../../../src/report/brief/try-first.ts';
import type { Cause } from '../../../src/score/rep-score.ts';
import type { DerivedTarget } from '../../../src/target/derive/derive-target.ts';
import type { Downshift } from '../../../src/target/derive/downshifts.ts';
import { aMeasure, CONDITIONS, someNumbers } from '../../consistency/rep-measures.ts';
import { aScore } from '../../history/fixtures.ts';
import { MEASURES } from '../../screens/live/sample-live.ts';

const SHIFT: Downshift = {
  fromGear: 3,
  toGear: 2,
  atM: -12,
  earliestM: -12,
  speedMps: 30,
  rpm: 6800.4,
  ease: 0,
  rearUse: 0.82,
  safe: true,
};

/** Only what a brief reads of a derived target. */
function derived(shifts: readonly Downshift[] = [SHIFT]): DerivedTarget {
  const point = { sM: 0, pedalForceN: 0, level: 0, speedMps: 0 };
  return {
    corner: { variant: 'race', gears: { approach: 5, slowest: 2, shiftsAtM: null } },
    zone: { downshifts: shifts },
    keys: {
      brakePoint: { ...point, sM: -85 },
      peak: { ...point, pedalForceN: 726, level: 0.61 },
      startOfRelease: { ...point, sM: 7 },
      apex: { ...point, level: 0.075 },
      slowest: { ...point, speedMps: 20 },
    },
    bumps: [
      { bump: { atM: -42, lengthM: 3, depth: 0.15 }, rearUse: 1.17, ease: 0.17 },
      { bump: { atM: 0, lengthM: 3, depth: 0.1 }, rearUse: Number.POSITIVE_INFINITY, ease: 0 },
    ],
  } as unknown as DerivedTarget;
}

describe('a target in five numbers', () => {
  const values = (units: 'metric' | 'imperial') =>
    targetNumbers(derived(), units).map(({ name, value }) => `${name}: ${value}`);

  test('metric', () =>
    expect(values('metric')).toEqual([
      'brake point: 85.0 m before turn-in',
      'peak: 726 N (61 % of full scale)',
      'start of release: 7.0 m after turn-in',
      'level at the apex: 8 %',
      'slowest speed: 72 km/h',
    ]));

  test('imperial: 0.3048 m, 4.44822 N and 0.44704 m/s (NIST SP 811, appendix B)', () =>
    expect(values('imperial')).toEqual([
      'brake point: 279 ft before turn-in',
      'peak: 163 lbf (61 % of full scale)',
      'start of release: 23 ft after turn-in',
      'level at the apex: 8 %',
      'slowest speed: 45 mph',
    ]));
});

describe('gears and bumps', () => {
  test('name the last downshift of several', () => {
    const first = { ...SHIFT, fromGear: 5, toGear: 3, atM: -60 };
    expect(gearLine(derived([first, SHIFT]), 'metric')).toBe(
      'race: gear 5 to 2; last downshift 3 to 2, 12.0 m before turn-in, 6800 rpm, rear margin 18 %',
    );
  });

  test('say by how much the brake is eased for a shift', () => {
    const eased = { ...SHIFT, ease: 0.03, rearUse: 0.996 };
    expect(gearLine(derived([eased]), 'metric')).toMatch(
      /6800 rpm, rear margin 0 % with the brake eased by 3 %$/,
    );
  });

  test('say where a shift is not safe, and whether any place is', () => {
    const late = { ...SHIFT, safe: false, earliestM: 4 };
    expect(gearLine(derived([late]), 'metric')).toMatch(
      /NOT safe.*safe from 4\.0 m after turn-in$/,
    );
    const never = { ...SHIFT, safe: false, earliestM: null };
    expect(gearLine(derived([never]), 'metric')).toMatch(/NOT safe.*no place is safe$/);
    expect(gearLine(derived([]), 'metric')).toBe('race: stay in gear 5, no downshift');
  });

  test('say what a bump leaves the rear axle', () =>
    expect(bumpLines(derived(), 'metric')).toEqual([
      '42.0 m before turn-in: rear margin -17 %, ease 17 % over it',
      'at turn-in: rear margin none',
    ]));
});

describe('the reps a brief speaks of', () => {
  test('end at a break, at another foot and after four weeks', () => {
    const day = (date: string) => aMeasure({ day: date });
    const old = day('2026-10-28');
    const kept = [day('2026-10-29'), day('2026-11-25')];
    const right = aMeasure({ day: '2026-11-01', conditions: { ...CONDITIONS, foot: 'right' } });
    expect(comparableReps([old, kept[0]!, right, kept[1]!])).toEqual(kept);
    const broken = aMeasure({
      day: '2026-11-24',
      conditions: { ...CONDITIONS, footwear: 'socks' },
    });
    expect(comparableReps([broken, kept[1]!])).toEqual([kept[1]]);
    expect(comparableReps([])).toEqual([]);
  });

  const hidden = (releaseErrorLevel: number, averageErrorLevel: number) =>
    aMeasure({
      feedback: 'hidden',
      numbers: someNumbers({ releaseErrorLevel, averageErrorLevel }),
    });

  test('give figures where there are enough of them', () => {
    // deviations of 1 % to both sides of 0: sqrt(10 * 0.01^2 / 9) = 0.01054
    const reps = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10].map((n) => hidden(n / 100, n % 2 ? 0.01 : -0.01));
    const first = [0.05, 0.09, 0.02, 0.07, 0.08].map((releaseErrorLevel) =>
      aMeasure({ feedback: 'first-of-day', numbers: someNumbers({ releaseErrorLevel }) }),
    );
    const [hiddenLine, firstLine] = consistencyLines([...reps, ...first]);
    expect(hiddenLine).toBe(
      'hidden reps: release error 5.5 % (median of 10); spread 1.1 % of full scale',
    );
    expect(firstLine).toBe('first of the day: release error 7.0 % (median of 5)');
  });

  test('say how many are missing where there are too few', () => {
    const [hiddenLine, firstLine] = consistencyLines([hidden(0.1, 0), hidden(0.1, 0)]);
    expect(hiddenLine).toBe('hidden reps: 2 of 8 reps for a median; 2 of 10 reps for a spread');
    expect(firstLine).toBe('first of the day: 0 of 5 reps for a median');
    expect(consistencyLines([])).toEqual(['no reps yet in this car and variant']);
  });
});

describe('what to try first', () => {
  const late: Cause = {
    kind: 'timing',
    timingS: 0.08,
    rateRatio: 1,
    amountRatio: 1,
    explained: 0.9,
  };
  const outcome = (cause: Cause) => aScore({ cause });

  test('is what the newest reps share, then the words of the coach', () =>
    expect(tryFirst([outcome(late), outcome(late), outcome(late)], ['Hit it once.', null])).toEqual(
      [
        'start to release 80 ms earlier (released 80 ms late in 3 of the last 3 reps)',
        'Hit it once.',
      ],
    ));

  test('is the speed first where most were far too fast', () => {
    // 3 m/s are 10.8 km/h or 6.7 mph
    const live = { ...MEASURES, slowestSpeedMps: 25, slowestSpeedErrorMps: 3 };
    const fast = aScore({ cause: { ...late, timingS: -0.08 }, live });
    expect(tryFirst([fast, fast, fast], ['a'])).toEqual([
      'be 11 km/h slower at the slowest point; start to release 80 ms later (11 km/h too fast at the slowest point in 3, released 80 ms early in 3 of the last 3 reps)',
      'a',
    ]);
    expect(tryFirst([fast, fast, fast], [], 'imperial')[0]).toMatch(/^be 7 mph slower/);
  });

  test('is the words alone where fewer than three reps share a cause, or it is within its band', () => {
    expect(tryFirst([outcome(late), outcome(late)], ['a', ''])).toEqual(['a']);
    const small = { ...late, timingS: 0.001 };
    const near = aScore({ cause: small, reapplications: 0, reapplied: 0 });
    expect(tryFirst([near, near, near], ['a'])).toEqual(['a']);
  });
});
