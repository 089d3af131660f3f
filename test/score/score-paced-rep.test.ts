import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { scorePacedRep } from '../../src/score/score-paced-rep.ts';
import { scoreRep } from '../../src/score/score-rep.ts';
import { readTarget } from '../../src/target/read-target.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import { record } from './curves.ts';

const file = new URL('../../profiles/targets/hairpin.yaml', import.meta.url);
const HAIRPIN = readTarget(readFileSync(file, 'utf8'), 'hairpin.yaml');
const { level, steering } = HAIRPIN;

/** Where on the target a driver is at a moment who does everything late or slowly from half-way into the wheel on. */
type Clock = (timeS: number) => number;

function driven(foot: Clock, hands: Clock, untilS = 5): RepRecord {
  const rep = record((t) => level.at(foot(t)), { fromS: -0.5, toS: untilS });
  const timeS = rep.brake.timeS;
  return { ...rep, steering: { timeS, value: timeS.map((t) => steering!.at(hands(t))) } };
}
const onTime: Clock = (t) => t;
/** From 1.4 s on, when the wheel is well in, everything takes twice as long. */
const slow: Clock = (t) => (t < 1.4 ? t : 1.4 + (t - 1.4) / 2);
/** Everything from 1.5 s on comes a quarter of a second later, and stands still before. */
const late: Clock = (t) => (t < 1.5 ? t : Math.max(1.5, t - 0.25));

describe('a release paced by the steering', () => {
  test('is what any rep is where the wheel follows the target', () => {
    const rep = driven(onTime, onTime);
    expect(scorePacedRep(rep, HAIRPIN).score).toBeCloseTo(scoreRep(rep, HAIRPIN).score, 0);
  });

  test.each([
    ['slow', slow],
    ['late', late],
  ])('is right where the foot is as %s as the hands, which by the clock it is not', (_, clock) => {
    const rep = driven(clock, clock);
    expect(scorePacedRep(rep, HAIRPIN).score).toBeGreaterThan(97);
    expect(scoreRep(rep, HAIRPIN).score).toBeLessThan(85);
  });

  test.each([
    ['slow', slow],
    ['late', late],
  ])('is wrong where the foot goes by the clock and the hands are %s', (_, clock) => {
    const rep = driven(onTime, clock);
    expect(scoreRep(rep, HAIRPIN).score).toBeGreaterThan(97);
    const outcome = scorePacedRep(rep, HAIRPIN);
    expect(outcome.score).toBeLessThan(85);
    // earlier off the brake than the wheel asked for
    expect(outcome).toMatchObject({ kind: 'scored' });
    if (outcome.kind === 'scored') expect(outcome.averageErrorLevel).toBeLessThan(-0.01);
  });

  test('a wheel that never turns in asks for nothing, and holding on for it earns nothing', () => {
    const held = driven(
      (t) => Math.min(t, 1),
      () => 0,
    );
    expect(scorePacedRep(held, HAIRPIN)).toMatchObject({
      kind: 'no-rep',
      score: 0,
      reason: 'wheel never turned in',
    });
    const without = { ...driven(onTime, onTime), steering: null };
    expect(scorePacedRep(without, HAIRPIN).score).toBe(0);
  });

  test('a wheel that stops half-way still asks for the rest: who lets go is early', () => {
    const stopped: Clock = (t) => Math.min(t, 1.6);
    expect(scorePacedRep(driven(onTime, stopped), HAIRPIN).score).toBeLessThan(50);
  });

  test('never braked stays never braked', () => {
    const rep = driven(() => -1, onTime);
    expect(scorePacedRep(rep, HAIRPIN)).toMatchObject({ kind: 'no-rep', reason: 'never braked' });
  });
});
