import { describe, expect, test } from 'vitest';
import type { KeyAction } from '../../src/drill/drill-message.ts';
import { viewOf } from '../../src/drill/view-of.ts';
import type { ButtonAction, ButtonEvent } from '../../src/trace/rig-batch.ts';
import { CUE_S, type Fed, feed, fresh, RAMP, type Script, START_S, say } from './drill-rig.ts';

const good: Script = { brake: (t) => RAMP.level.at(t - START_S) };
const IN_REP_S = START_S + 0.5;
const OVER_S = START_S + 2.02;

const until = (toS: number, script = good): Fed => feed(fresh(), script, { fromS: 0, toS });
const press = (fed: Fed, action: KeyAction): Fed => say(fed, { kind: 'key', action });
const phase = (fed: Fed) => viewOf(fed.model).phase;
const stored = ({ effects }: Fed) =>
  effects.flatMap((effect) => (effect.kind === 'store' ? [effect.rep] : []));

describe('restart', () => {
  test('in the middle of a rep stores it as aborted, counts it and starts the next', () => {
    const fed = press(until(IN_REP_S), 'repeat');
    expect(stored(fed)).toMatchObject([
      { number: 1, place: 1, voided: 'aborted', outcome: null, feedback: 'shown' },
    ]);
    expect(stored(fed)[0]?.record.brake.timeS.length).toBeGreaterThan(500);
    expect(viewOf(fed.model)).toMatchObject({ phase: 'arming', rep: 2 });
  });

  test('before the cue takes nothing back, for nothing was tried', () => {
    const fed = press(until(2), 'repeat');
    expect(stored(fed)).toEqual([]);
    expect(viewOf(fed.model).rep).toBe(1);
  });

  test('or the next key ends the rest', () => {
    for (const action of ['repeat', 'next'] as const)
      expect(phase(press(until(OVER_S + 1), action))).toBe('arming');
  });
});

describe('pause', () => {
  test('by key stops between reps and goes on with the same key', () => {
    const paused = press(until(2), 'pause');
    expect(viewOf(paused.model)).toMatchObject({ phase: 'paused', rep: 1 });
    const later = feed(paused.model, good, { fromS: 2, toS: 6 });
    expect(phase(later)).toBe('paused');
    expect(phase(press(later, 'pause'))).toBe('arming');
  });

  test('after the cue aborts the rep', () => {
    const fed = press(until(CUE_S + 0.05), 'pause');
    expect(phase(fed)).toBe('paused');
    expect(stored(fed)).toMatchObject([{ voided: 'aborted' }]);
  });

  const holding = (fromS: number, toS: number): Script => ({
    ...good,
    clutch: (t) => (t > fromS && t < toS ? 1 : 0),
  });

  test('by clutch takes two seconds, and the same again goes on', () => {
    const script = holding(OVER_S + 1, OVER_S + 4);
    expect(phase(until(OVER_S + 2.9, script))).toBe('result');
    expect(phase(until(OVER_S + 3.1, script))).toBe('paused');
    expect(phase(until(OVER_S + 3.9, script))).toBe('paused');
    const second: Script = {
      ...good,
      clutch: (t) => (t % 5 > 1 && t % 5 < 3.2 ? 1 : 0),
    };
    const paused = until(OVER_S + 3.1, script).model;
    const on = feed(paused, second, { fromS: OVER_S + 3.1, toS: 10 });
    expect(phase(on)).toBe('paused');
    expect(phase(feed(on.model, second, { fromS: 10, toS: 13.1 }))).toBe('arming');
  });

  test('a clutch held through the rep is driving', () => {
    const held = holding(CUE_S + 0.02, OVER_S - 0.02);
    expect(phase(until(OVER_S - 0.03, held))).toBe('braking');
    expect(phase(until(OVER_S + 1.9, held))).toBe('result');
  });
});

describe('a learned wheel button', () => {
  const click = (action: ButtonAction | null, timeS: number): ButtonEvent => ({
    timeS,
    control: 'wheel button 4',
    pressed: true,
    action,
  });

  test('does what its key does, on the way down only', () => {
    const down = { ...good, buttons: [click('pause', 2)] };
    expect(phase(until(2.1, down))).toBe('paused');
    const up = { ...good, buttons: [{ ...click('pause', 2), pressed: false }] };
    expect(phase(until(2.1, up))).toBe('countdown');
    expect(phase(until(2.1, { ...good, buttons: [click(null, 2)] }))).toBe('countdown');
  });

  test('paddles shift from the gear above the first downshift, never below first gear', () => {
    const shifts = [3.8, 4.0, 4.2, 4.4, 4.45].map((timeS) => click('downshift', timeS));
    const gear = (toS: number) => viewOf(until(toS, { ...good, buttons: shifts }).model).gear;
    expect([3.7, 3.9, 4.1, 4.3, 4.5].map(gear)).toEqual([4, 3, 2, 1, 1]);
    const up = { ...good, buttons: [click('upshift', 3.8)] };
    expect(viewOf(until(3.9, up).model).gear).toBe(5);
    const { buttons } = stored(until(OVER_S, { ...good, buttons: shifts }))[0]!.record;
    expect(buttons[0]?.timeS).toBeCloseTo(3.8 - CUE_S, 9);
  });
});

describe('a lost device', () => {
  const lose = (fed: Fed) => say(fed, { kind: 'device-lost', name: 'Pedals' });
  const back = (fed: Fed) => say(fed, { kind: 'device-back', name: 'Pedals' });

  test('voids the rep under way, is named, and the rep is driven again in the same place', () => {
    const lost = lose(until(IN_REP_S));
    expect(stored(lost)).toMatchObject([{ number: 1, place: 1, voided: 'device lost' }]);
    expect(viewOf(lost.model)).toMatchObject({
      phase: 'device-lost',
      message: 'Pedals was lost: this rep does not count. Waiting for Pedals: plug it in again.',
    });
    const returned = back(lost);
    expect(viewOf(returned.model)).toMatchObject({ phase: 'arming', rep: 1 });
    const again = feed(
      returned.model,
      { brake: (t) => RAMP.level.at(t - 10) },
      { fromS: 6, toS: 14 },
    );
    expect(stored(again)).toMatchObject([{ number: 2, place: 1, voided: null }]);
  });

  test('leaves no level behind that nobody measures any more', () => {
    expect(viewOf(until(2).model).brakeLevel).toBe(0);
    expect(viewOf(lose(until(2)).model).brakeLevel).toBeNull();
  });

  test('between reps costs nothing', () => {
    const lost = lose(until(OVER_S + 1));
    expect(phase(lost)).toBe('device-lost');
    expect(stored(lost)).toMatchObject([{ voided: null }]);
    expect(viewOf(back(lost).model)).toMatchObject({ phase: 'arming', rep: 2 });
  });

  test('keeps the drill waiting until all are back, also out of a pause', () => {
    const two = say(lose(until(2)), { kind: 'device-lost', name: 'Wheel' });
    expect(phase(back(two))).toBe('device-lost');
    const paused = lose(press(until(2), 'pause'));
    expect(phase(paused)).toBe('paused');
    expect(phase(press(paused, 'pause'))).toBe('device-lost');
    expect(phase(back(press(paused, 'pause')))).toBe('arming');
  });
});

describe('finish', () => {
  test('shows the summary of what was driven, and ends from there', () => {
    const summed = press(until(OVER_S + 1), 'finish');
    expect(viewOf(summed.model)).toMatchObject({ phase: 'summary', summary: { reps: 1 } });
    expect(viewOf(summed.model)).toMatchObject({ done: 1, reps: 10 });
    expect(press(summed, 'finish').effects.at(-1)).toEqual({ kind: 'end' });
  });

  test('in the middle of a rep keeps it as aborted', () => {
    const summed = press(until(IN_REP_S), 'finish');
    expect(stored(summed)).toMatchObject([{ voided: 'aborted' }]);
    expect(viewOf(summed.model).summary).toMatchObject({ reps: 0, aborted: 1 });
    expect(viewOf(summed.model).done).toBe(1);
  });

  test('before the first rep just ends', () => {
    expect(press(until(1), 'finish').effects).toEqual([{ kind: 'end' }]);
  });
});

test('a note is about the last rep, and needs one', () => {
  expect(press(until(2), 'note').effects).toEqual([]);
  expect(viewOf(press(until(2), 'note').model).message).toBe('No rep to mark yet.');
  const marked = press(until(OVER_S + 1), 'note');
  expect(marked.effects.at(-1)).toEqual({ kind: 'note', rep: 1 });
  expect(viewOf(marked.model).message).toMatch(/^Rep 1 of this practice marked/);
});
