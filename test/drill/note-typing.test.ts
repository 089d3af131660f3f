import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DrillEffect, DrillMessage, FinishedRep } from '../../src/drill/drill-message.ts';
import type { DrillModel } from '../../src/drill/drill-model.ts';
import { LONGEST_NOTE, type NoteKey } from '../../src/drill/note-typing.ts';
import { viewOf } from '../../src/drill/view-of.ts';
import { type Fed, feed, fresh, NEVER_BRAKED, RAMP, START_S, say } from './drill-rig.ts';

/** On the brake from 3.401 s, off again 1.4 s later, and off from then on. */
const press = (t: number): number => RAMP.level.at(t - START_S);
const drive = (fed: Fed, fromS: number, toS: number): Fed => {
  const { model, effects } = feed(fed.model, { brake: press }, { fromS, toS });
  return { model, effects: [...fed.effects, ...effects] };
};
const key = (fed: Fed, action: 'note' | 'next' | 'repeat' | 'pause' | 'finish'): Fed =>
  say(fed, { kind: 'key', action });
const type = (fed: Fed, ...keys: readonly NoteKey[]): Fed =>
  keys.reduce((now, one) => say(now, { kind: 'type', key: one }), fed);
const letters = (text: string): NoteKey[] =>
  [...text].map((letter) => ({ kind: 'character', text: letter }));
const DONE: NoteKey = { kind: 'done' };
const texts = ({ effects }: { effects: readonly DrillEffect[] }): unknown[] =>
  effects.filter(({ kind }) => kind === 'note-text');

/** The first rep is over at 5.4 s, its result is told from 7.9 s, the rest goes on from 10.4 s to 15.4 s. */
const REST_S = 12;
const begin = (change = {}): Fed => ({ model: fresh(change), effects: [] });
const resting = (change = {}): Fed => drive(begin(change), 0, REST_S);
const noteOf = ({ model }: { model: DrillModel }) => viewOf(model).note;

describe('a note in the rest', () => {
  test('is a mark at once, and words when they are kept', () => {
    const open = key(resting(), 'note');
    expect(open.effects.at(-1)).toEqual({ kind: 'note', rep: 1 });
    const typing = type(open, ...letters('ease ovr'), { kind: 'erase' }, ...letters('er'));
    expect(noteOf(typing)).toEqual({ rep: 1, text: 'ease over' });
    const kept = type(typing, DONE);
    expect(kept.effects.at(-1)).toEqual({ kind: 'note-text', rep: 1, text: 'ease over' });
    expect(viewOf(kept.model)).toMatchObject({ note: null, message: 'Note on rep 1 kept.' });
  });

  test('Enter without words, or Esc, leaves the mark alone', () => {
    const open = key(resting(), 'note');
    expect(texts(type(open, ...letters('  '), DONE))).toEqual([]);
    const skipped = type(open, ...letters('x'), { kind: 'skip' });
    expect(texts(skipped)).toEqual([]);
    expect(noteOf(skipped)).toBeNull();
  });

  test('holds the next countdown for as long as it takes, and no longer', () => {
    const late = drive(key(resting(), 'note'), REST_S, 40);
    expect(late.model.stage.kind).toBe('after');
    const kept = drive(type(late, ...letters('a'), DONE), 40, 40.1);
    expect(kept.model.stage.kind).toBe('arming');
    expect(drive(kept, 40.1, 41).model.stage.kind).toBe('countdown');
  });

  test('holds the end of the block, too', () => {
    const open = key(resting({ reps: 1 }), 'note');
    expect(viewOf(open.model).phase).toBe('summary');
    const soon = key(drive(begin({ reps: 1 }), 0, 9), 'note');
    expect(drive(soon, 9, 30).model.stage.kind).toBe('after');
  });

  test('is as long as a note may be', () => {
    const full = type(key(resting(), 'note'), ...letters('é'.repeat(LONGEST_NOTE + 5)), DONE);
    expect(texts(full)).toEqual([{ kind: 'note-text', rep: 1, text: 'é'.repeat(LONGEST_NOTE) }]);
  });
});

describe('where nothing is typed', () => {
  test('during a rep and a countdown the key only marks', () => {
    const nextRep = drive(key(resting(), 'next'), REST_S, REST_S + 2);
    expect(nextRep.model.stage.kind).toBe('countdown');
    const marked = key(nextRep, 'note');
    expect(marked.effects.at(-1)).toEqual({ kind: 'note', rep: 1 });
    expect(noteOf(marked)).toBeNull();
  });

  test('a wheel button only marks, and the rest goes on', () => {
    const button = { timeS: REST_S + 0.5, control: 'x', pressed: true, action: 'note' } as const;
    const script = { brake: press, buttons: [button] };
    const fed = feed(resting().model, script, { fromS: REST_S, toS: 16 });
    expect(fed.effects).toEqual([{ kind: 'note', rep: 1 }]);
    expect(fed.model.stage.kind).not.toBe('after');
  });

  test('while the driver is asked how the rep felt its keys are no letters', () => {
    const asked = drive(begin({ asksRating: true }), 0, 7);
    expect(viewOf(asked.model).rating).not.toBeNull();
    expect(noteOf(key(asked, 'note'))).toBeNull();
  });

  test('keys without a note do nothing', () => {
    const { model } = resting();
    expect(say({ model, effects: [] }, { kind: 'type', key: DONE }).model).toBe(model);
  });
});

describe('what is typed is not lost', () => {
  const typing = (): Fed => type(key(resting(), 'note'), ...letters('ease'));
  const KEPT = [{ kind: 'note-text', rep: 1, text: 'ease' }];

  test('to a wheel button that goes on', () => {
    const button = { timeS: REST_S + 0.5, control: 'x', pressed: true, action: 'next' } as const;
    const script = { brake: press, buttons: [button] };
    const fed = feed(typing().model, script, { fromS: REST_S, toS: REST_S + 1 });
    expect(texts(fed)).toEqual(KEPT);
    expect(fed.model.note).toBeNull();
  });

  test('to a device that is gone', () => {
    const lost = say(typing(), { kind: 'device-lost', name: 'Pedals' });
    expect(texts(lost)).toEqual(KEPT);
    const back = say(lost, { kind: 'device-back', name: 'Pedals' });
    expect(back.model).toMatchObject({ note: null, stage: { kind: 'arming' } });
  });

  test('to a clutch that pauses', () => {
    const clutch = (t: number): number => (t > REST_S ? 1 : 0);
    const held = feed(typing().model, { brake: press, clutch }, { fromS: REST_S, toS: 15 });
    expect(held.model).toMatchObject({ stage: { kind: 'paused' }, note: { text: 'ease' } });
    expect(texts(type(held, DONE))).toEqual(KEPT);
  });
});

/** Whatever is typed when, what the foot did is stored as it would have been: nothing but the waiting differs. */
test('typing disturbs no sample and loses no rep', () => {
  const reps = ({ effects }: Fed): FinishedRep[] =>
    effects.flatMap((effect) => (effect.kind === 'store' ? [effect.rep] : []));
  const anyKey = fc.oneof(
    fc.record({ kind: fc.constant('type' as const), key: fc.constantFrom(...letters('ab'), DONE) }),
    fc.constant<DrillMessage>({ kind: 'key', action: 'note' }),
  );
  const driven = (keys: readonly (readonly [number, DrillMessage])[], types: boolean): Fed => {
    let [fed, fromS]: [Fed, number] = [begin(), 0];
    for (const [tenths, message] of keys) {
      if (tenths / 10 > fromS) fed = drive(fed, fromS, tenths / 10);
      fromS = tenths / 10;
      if (types) fed = say(fed, message, NEVER_BRAKED);
    }
    return drive(fed, fromS, 9);
  };
  fc.assert(
    fc.property(
      fc.array(fc.tuple(fc.integer({ min: 1, max: 89 }), anyKey), { maxLength: 12 }),
      (keys) => {
        const inTime = keys.toSorted(([a], [b]) => a - b);
        const quiet = reps(driven(inTime, false));
        expect(quiet).toHaveLength(1);
        expect(reps(driven(inTime, true))).toEqual(quiet);
      },
    ),
    { numRuns: 30 },
  );
});
