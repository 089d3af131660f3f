import { describe, expect, test } from 'vitest';
import { faultOf } from '../../src/score/describe-outcome.ts';
import type { Cause, RepScore } from '../../src/score/rep-score.ts';
import { bigWordWidth } from '../../src/screens/big-word.ts';
import { aScore } from '../history/fixtures.ts';

const NO_CAUSE: Cause = { kind: 'shape', timingS: 0, rateRatio: 1, amountRatio: 1, explained: 0.9 };
const NONE: RepScore = {
  ...aScore(),
  cause: null,
  flags: [],
  live: null,
  pointsLost: { release: 0, hit: 0, smooth: 0 },
};
const release = (cause: Partial<Cause>): RepScore => ({
  ...NONE,
  pointsLost: { release: 20, hit: 0, smooth: 0 },
  cause: { ...NO_CAUSE, ...cause },
});
const hit = (change: Partial<RepScore>): RepScore => ({
  ...NONE,
  pointsLost: { release: 0, hit: 20, smooth: 0 },
  peakError: 0,
  riseErrorS: 0,
  ...change,
});
const smooth = (change: Partial<RepScore>): RepScore => ({
  ...NONE,
  pointsLost: { release: 0, hit: 0, smooth: 20 },
  reapplied: 0,
  reapplications: 0,
  ...change,
});
const bent = (late: Partial<RepScore['keyPointErrorsS']>): RepScore => ({
  ...release({ kind: 'shape' }),
  keyPointErrorsS: { startOfRelease: 0, halfRelease: 0, finalRelease: 0, brakeOff: 0, ...late },
  reapplications: 0,
  rateRatio: 1,
});

/** Every pair of words with the sentence that it stands beside: it says the same, and never what to do. */
const FAULTS: readonly (readonly [string, RepScore, string])[] = [
  ['released 80 ms early', release({ kind: 'timing', timingS: -0.08 }), 'eased early'],
  ['released 80 ms late', release({ kind: 'timing', timingS: 0.08 }), 'eased late'],
  ['20 % too quick off the brake', release({ kind: 'rate', rateRatio: 0.8 }), 'eased quick'],
  ['20 % too slow off the brake', release({ kind: 'rate', rateRatio: 1.2 }), 'eased slow'],
  [
    '10 % too light through the release',
    release({ kind: 'amount', amountRatio: 0.9 }),
    'too light',
  ],
  [
    '10 % too heavy through the release',
    release({ kind: 'amount', amountRatio: 1.1 }),
    'too heavy',
  ],
  ['at half pressure 90 ms early', bent({ halfRelease: -0.09 }), 'half early'],
  ['down to the last tenth 90 ms late', bent({ finalRelease: 0.09 }), 'tenth late'],
  ['off the brake 90 ms late', bent({ brakeOff: 0.09 }), 'off late'],
  ['the brake was never fully released', { ...release({}), flags: ['not-released'] }, 'not off'],
  ['hit 12 % too hard', hit({ peakError: 0.12 }), 'peak high'],
  ['hit 12 % too light', hit({ peakError: -0.12 }), 'peak low'],
  ['80 ms too slow to the peak', hit({ riseErrorS: 0.08 }), 'peak late'],
  ['80 ms too quick to the peak', hit({ riseErrorS: -0.08 }), 'peak early'],
  [
    'back on the brake once during the release',
    smooth({ reapplied: 0.1, reapplications: 1 }),
    'back on',
  ],
  ['released in a step, 4.0 times as steep as the target', smooth({ rateRatio: 4 }), 'in a step'],
];

describe('a fault', () => {
  test.each(FAULTS)('%s', (words, rep, glance) => {
    const found = faultOf(rep)!;
    expect([found.words, found.glance.join(' ')]).toEqual([words, glance]);
  });

  test.each(FAULTS)('%s: its large words fit into the 40 columns beside a picture', (_, rep) => {
    for (const word of faultOf(rep)!.glance) expect(bigWordWidth(word)).toBeLessThanOrEqual(40);
  });

  test('is none where nothing was off', () => expect(faultOf(NONE)).toBeNull());
});
