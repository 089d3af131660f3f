import { describe, expect, test } from 'vitest';
import { describeCause } from '../../src/score/describe-cause.ts';
import { describeOutcome } from '../../src/score/describe-outcome.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import { archetypes } from './archetypes.ts';
import { FALLS, record, SHAPE, shapeTarget } from './curves.ts';

describe('describeOutcome', () => {
  const target = shapeTarget({ ...SHAPE, fall: FALLS.convex });
  const reps = archetypes('convex', { meanLevel: 0.28, onOffLevel: 0.53, onOffSwitchS: 1.05 });

  test.each([
    ['perfect copy', ''],
    ['release 100 ms late', 'released 100 ms late'],
    ['release 100 ms early', 'released 100 ms early'],
    ['release 20 % too fast', '20 % too quick off the brake'],
    ['release 20 % too slow', '20 % too slow off the brake'],
    ['10 % too light', '10 % too light through the release'],
    ['15 % too hard', '15 % too heavy through the release'],
    ['slow hit (250 ms rise)', '60 ms too slow to the peak'],
    ['1 re-application of 8 %', ''],
    ['1 re-application of 20 %', 'back on the brake once during the release'],
    ['staircase, 5 steps', 'released in a step, 6.1 times as steep as the target'],
    ['G right hit, instant dump', /^released in a step, \d+\.\d times as steep as the target$/],
    ['G nothing', 'no braking was seen'],
    ['G hold for ever', 'the brake was never fully released'],
  ])('%s: %s', (name, sentence) => {
    const words = describeOutcome(scoreRep(record(reps[name]!), target));
    if (typeof sentence === 'string') expect(words).toBe(sentence);
    else expect(words).toMatch(sentence);
  });
});

describe('describeOutcome tells of the part that cost most', () => {
  const outcome = scoreRep(
    record(() => 0),
    shapeTarget(SHAPE),
  );
  const perfect = scoreRep(record(shapeTarget(SHAPE).level.at), shapeTarget(SHAPE));
  if (perfect.kind !== 'scored') throw new Error('not scored');
  const hit = { ...perfect, pointsLost: { release: 0, hit: 9, smooth: 1 } };
  const smooth = { ...perfect, pointsLost: { release: 0, hit: 0, smooth: 9 } };

  test.each([
    ['nothing', outcome, 'no braking was seen'],
    ['a hard hit', { ...hit, peakError: 0.12 }, 'hit 12 % too hard'],
    ['a light hit', { ...hit, peakError: -0.12 }, 'hit 12 % too light'],
    ['a slow hit', { ...hit, riseErrorS: 0.08 }, '80 ms too slow to the peak'],
    ['a quick hit', { ...hit, riseErrorS: -0.08 }, '80 ms too quick to the peak'],
    [
      'once back on',
      { ...smooth, reapplied: 0.05, reapplications: 1 },
      'back on the brake once during the release',
    ],
    [
      'twice back on',
      { ...smooth, reapplied: 0.05, reapplications: 2 },
      'back on the brake twice during the release',
    ],
    [
      'pumping',
      { ...smooth, reapplied: 0.05, reapplications: 4 },
      'back on the brake 4 times during the release',
    ],
    [
      'a step',
      { ...smooth, rateRatio: 4.2 },
      'released in a step, 4.2 times as steep as the target',
    ],
  ])('%s', (_, rep, sentence) => {
    expect(describeOutcome(rep)).toBe(sentence);
  });
});

describe('describeCause', () => {
  const none = { timingS: 0, rateRatio: 1, amountRatio: 1, explained: 0.9 };

  test.each([
    [{ kind: 'timing', timingS: 0.02 }, ''],
    [{ kind: 'timing', timingS: -0.043 }, 'released 40 ms early'],
    [{ kind: 'rate', rateRatio: 1.04 }, ''],
    [{ kind: 'rate', rateRatio: 1.12 }, '12 % too slow off the brake'],
    [{ kind: 'amount', amountRatio: 0.94 }, ''],
    [{ kind: 'amount', amountRatio: 1.09 }, '9 % too heavy through the release'],
    [{ kind: 'shape' }, 'a different shape of release'],
  ] as const)('%o: %s', (cause, words) => {
    expect(describeCause({ ...none, ...cause })).toBe(words);
  });
});
