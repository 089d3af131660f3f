import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DrillEffect } from '../../src/drill/drill-message.ts';
import { viewOf } from '../../src/drill/view-of.ts';
import type { RepRecord } from '../../src/trace/rep-record.ts';
import { CUE_S, feed, fresh, RAMP, type Script, START_S } from './drill-rig.ts';

const good: Script = { brake: (t) => RAMP.level.at(t - START_S) };

const played = (script: Script, toS: number) => feed(fresh(), script, { fromS: 0, toS });
const view = (script: Script, toS: number) => viewOf(played(script, toS).model);
const kinds = (effects: readonly DrillEffect[]) => effects.map(({ kind }) => kind);

function scoredRecord(effects: readonly DrillEffect[]): RepRecord {
  const effect = effects.find((e) => e.kind === 'score');
  if (effect === undefined) throw new Error('no rep was scored');
  return effect.record;
}

describe('a rep', () => {
  test('goes from arming to the next rep without a key', () => {
    const phase = (toS: number) => view(good, toS).phase;
    expect(phase(0.2)).toBe('arming');
    expect(phase(0.4)).toBe('countdown');
    expect(phase(3.29)).toBe('countdown');
    expect(phase(3.35)).toBe('cue');
    expect(phase(3.5)).toBe('braking');
    // 1.4 s of target, 0.3 s to be sure that the brake is off and 0.3 s more on the record
    expect(phase(START_S + 1.98)).toBe('braking');
    expect(phase(START_S + 2.02)).toBe('result');
    expect(phase(START_S + 2.02 + 5)).toBe('rest');
    expect(phase(START_S + 2.02 + 10)).toBe('arming');
    expect(phase(START_S + 2.02 + 10.4)).toBe('countdown');
  });

  test('counts down to a cue that can be foreseen', () => {
    expect(view(good, 1.301).toCueS).toBeCloseTo(2, 6);
    expect(view(good, 3.201).toCueS).toBeCloseTo(0.1, 6);
    expect(view(good, 3.4).toCueS).toBeNull();
  });

  test('is scored once, then stored before its result is shown', () => {
    const { effects } = played(good, START_S + 2.02);
    expect(kinds(effects)).toEqual(['score', 'store']);
    expect(effects[1]).toMatchObject({
      rep: { number: 1, place: 1, block: 1, phase: 'block', feedback: 'shown', voided: null },
    });
    expect(view(good, START_S + 2.02 + 2.4).result).toBeNull();
    expect(view(good, START_S + 2.02 + 2.6).result).toMatchObject({ number: 1 });
  });

  test('is recorded from 0.5 s before the cue until 0.6 s after brake off, timed from the cue', () => {
    const record = scoredRecord(played(good, START_S + 2.02).effects);
    expect(record.brake.timeS[0]).toBeCloseTo(-0.5, 9);
    expect(record.endS).toBeCloseTo(START_S - CUE_S + 1.4 + 0.6, 1);
    expect(record.brake.timeS.at(-1)).toBeCloseTo(record.endS, 2);
    const peakAt = record.brake.value.indexOf(0.8);
    expect(record.brake.timeS[peakAt]).toBeCloseTo(START_S - CUE_S + 0.1, 2);
  });

  test('leaves out axes that the rig does not have, and begins with what an axis held', () => {
    const model = fresh({ axes: { throttle: false, clutch: true, steering: true } });
    const script = { ...good, steering: () => 0, clutch: (t: number) => (t < 1 ? 0.25 : 0.25) };
    const { effects } = feed(model, script, { fromS: 0, toS: START_S + 2.02 });
    const record = scoredRecord(effects);
    expect(record.throttle).toBeNull();
    expect(record.clutch?.value[0]).toBe(0.25);
  });

  test('is the same however its samples are cut into batches', () => {
    const whole = played(good, START_S + 3).effects;
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 3000 }), (batch) => {
        const cut = feed(fresh(), good, { fromS: 0, toS: START_S + 3, batch }).effects;
        expect(scoredRecord(cut)).toEqual(scoredRecord(whole));
      }),
      { numRuns: 15 },
    );
  });
});

describe('the end of a rep', () => {
  test('without braking comes 3 s after the cue and is scored', () => {
    const idle: Script = { brake: () => 0.01 };
    expect(view(idle, CUE_S + 2.98).phase).toBe('cue');
    expect(view(idle, CUE_S + 3.02).phase).toBe('result');
    expect(scoredRecord(played(idle, CUE_S + 3.02).effects).endS).toBeCloseTo(3, 6);
  });

  test('of a brake that is held comes 1 s after the end of the target', () => {
    const held: Script = { brake: (t) => (t < START_S ? 0 : 0.7) };
    expect(view(held, START_S + 2.36).phase).toBe('braking');
    expect(view(held, START_S + 2.42).phase).toBe('result');
  });

  test('waits for the end of the target when the brake comes off early', () => {
    const dumped: Script = { brake: (t) => (t > START_S && t < START_S + 0.4 ? 0.8 : 0) };
    expect(view(dumped, START_S + 1.9).phase).toBe('braking');
    expect(view(dumped, START_S + 2.02).phase).toBe('result');
  });

  test('moves when the brake is pressed again', () => {
    const again = (t: number) => (t > START_S + 1.6 && t < START_S + 2.2 ? 0.2 : 0);
    const pumped: Script = { brake: (t) => Math.max(RAMP.level.at(t - START_S), again(t)) };
    expect(view(pumped, START_S + 2.7).phase).toBe('braking');
    expect(view(pumped, START_S + 2.82).phase).toBe('result');
  });
});

describe('arming', () => {
  test('waits for the foot to come off and says so', () => {
    const resting: Script = { brake: (t) => (t < 2 ? 0.3 : 0) };
    expect(view(resting, 1.9)).toMatchObject({
      phase: 'arming',
      message: 'Take your foot off the brake to start.',
    });
    expect(view(resting, 2.25).phase).toBe('arming');
    expect(view(resting, 2.35).phase).toBe('countdown');
  });

  test('starts again when the foot touches the brake', () => {
    const touching: Script = { brake: (t) => (t > 0.2 && t < 0.21 ? 0.3 : 0) };
    expect(view(touching, 0.4).phase).toBe('arming');
    expect(view(touching, 0.52).phase).toBe('countdown');
  });

  test('asks for a press where the brake reports only on change and has not moved', () => {
    const { model } = feed(fresh(), { brake: null }, { fromS: 0, toS: 1 });
    expect(viewOf(model)).toMatchObject({
      phase: 'arming',
      brakeLevel: null,
      message: 'Press the brake once: it has not reported yet.',
    });
  });
});

describe('braking around the cue', () => {
  test('in the countdown is a false start: said, stored as aborted, and it uses up its place', () => {
    const early: Script = { brake: (t) => (t > 2.3 && t < 3 ? 0.5 : 0) };
    const { model, effects } = played(early, 2.4);
    expect(kinds(effects)).toEqual(['store']);
    expect(effects[0]).toMatchObject({ rep: { number: 1, voided: 'aborted', outcome: null } });
    const now = viewOf(model);
    expect(now.phase).toBe('rest');
    expect(now.message).toBe('False start: on the brake 1.0 s before the cue.');
    expect(now.lastReps[0]).toMatchObject({ number: 1, voided: 'aborted' });
    const later = feed(model, early, { fromS: 2.4, toS: 8 });
    expect(viewOf(later.model).rep).toBe(2);
  });

  test('just ahead of the cue counts as a rep that started early', () => {
    const early: Script = { brake: (t) => RAMP.level.at(t - (CUE_S - 0.1)) };
    const { effects } = played(early, CUE_S + 2.5);
    const { brake } = scoredRecord(effects);
    const firstAbove = brake.value.findIndex((level) => level > 0.03);
    expect(brake.timeS[firstAbove]).toBeCloseTo(-0.1, 1);
    expect(brake.timeS[firstAbove]! - brake.timeS[0]!).toBeGreaterThan(0.3);
  });
});

describe('the now line', () => {
  test('rests at 0 until the onset is certain, then lies where a perfect rep meets the target', () => {
    expect(view(good, START_S).nowS).toBe(0);
    expect(view(good, START_S + 0.5).nowS).toBeCloseTo(0.5, 2);
    const { own } = view(good, START_S + 1);
    expect(own?.timeS.length).toBeGreaterThan(900);
    own?.timeS.forEach((t, i) => {
      // a millisecond of the steepest part, 8 per second
      expect(Math.abs(own.value[i]! - RAMP.level.at(t))).toBeLessThan(0.0082);
    });
  });

  test('does not leave for a resting foot or a knock shorter than 20 ms', () => {
    const knock: Script = { brake: (t) => (t > START_S && t < START_S + 0.015 ? 0.2 : 0.02) };
    expect(view(knock, START_S + 1).phase).toBe('cue');
  });
});
