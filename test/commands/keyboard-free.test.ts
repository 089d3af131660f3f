import { describe, expect, test } from 'vitest';
import { runDrill } from '../../src/commands/drill-loop.ts';
import { listButtons, pressableButtons } from '../../src/commands/list-buttons.ts';
import type { DrillSetup } from '../../src/drill/drill-setup.ts';
import type { DrillView } from '../../src/drill/drill-view.ts';
import { learnedButtons } from '../../src/drill/learned-buttons.ts';
import { selfRatingText } from '../../src/drill/self-rating.ts';
import { createRigDecoder } from '../../src/input/rig/rig-decoder.ts';
import type { ButtonAction } from '../../src/trace/rig-batch.ts';
import { setup } from '../drill/drill-rig.ts';
import { PressedButtons, rigWithJobs } from './pressed-buttons.ts';

const PADDLES: Readonly<Record<number, ButtonAction>> = { 1: 'upshift', 2: 'downshift' };
const JOBS: Readonly<Record<number, ButtonAction>> = {
  ...PADDLES,
  3: 'next',
  4: 'repeat',
  5: 'pause',
  6: 'feedback',
  7: 'note',
  8: 'self-rating',
  9: 'finish',
};

/** A drill that is driven from the wheel's reports alone. */
function drive(jobs: Readonly<Record<number, ButtonAction>>, change: Partial<DrillSetup> = {}) {
  const wheel = new PressedButtons();
  const rig = rigWithJobs(jobs);
  const told: { view: DrillView | null; ratings: string[]; notes: number[]; ended: boolean } = {
    view: null,
    ratings: [],
    notes: [],
    ended: false,
  };
  const buttons = learnedButtons(rig.buttons);
  const timing = { countdownS: 1, holdS: 2, showS: 1, restS: 3 };
  const run = runDrill(
    wheel.source,
    createRigDecoder(rig, wheel.source.devices),
    setup({ timing, buttons, reps: 3, ...change }),
    {
      store: () => undefined,
      rate: (_, rating) => told.ratings.push(selfRatingText(rating)),
      note: (rep) => told.notes.push(rep),
      onView: (view) => {
        told.view = view;
      },
    },
  ).then(() => {
    told.ended = true;
  });
  const until = (wanted: (view: DrillView) => boolean): void => {
    for (let steps = 0; steps < 2000 && !(told.view !== null && wanted(told.view)); steps++)
      wheel.play(0.008);
    if (told.view === null || !wanted(told.view)) throw new Error('it never came to that');
  };
  return { wheel, told, run, until, phase: () => told.view?.phase };
}

describe('a drill without a keyboard', () => {
  test('is rated, marked, paused, repeated and finished from the wheel', async () => {
    const { wheel, told, run, until, phase } = drive(JOBS);
    wheel.press(8);
    expect(told.view?.message).toBe('You will be asked how each rep felt.');
    until(({ rating }) => rating !== null);
    wheel.press(1); // right paddle: late
    expect(told.view?.rating).toEqual({ timing: 'late', amount: null });
    wheel.press(2); // left paddle: light
    expect(told.ratings).toEqual(['late light']);
    wheel.press(7);
    expect(told.notes).toEqual([1]);
    until(({ phase: now }) => now === 'rest');
    wheel.press(3);
    expect(phase()).not.toBe('rest');
    wheel.press(5);
    expect(phase()).toBe('paused');
    wheel.press(5);
    expect(phase()).not.toBe('paused');
    wheel.press(6);
    expect(told.view?.feedback).toBe('hidden');
    until(({ phase: now }) => now === 'braking');
    wheel.press(4);
    expect(told.view?.lastReps[0]).toMatchObject({ number: 2, voided: 'aborted' });
    wheel.press(9);
    expect(phase()).toBe('summary');
    wheel.press(9);
    await run;
    expect(told.ended).toBe(true);
  });

  test('next answers the middle while the question stands, and goes on after it', () => {
    const { wheel, told, until, phase } = drive(JOBS, { asksRating: true });
    until(({ rating }) => rating !== null);
    wheel.press(3);
    wheel.press(3);
    expect(told.ratings).toEqual(['right right']);
    expect(phase()).toBe('result');
    wheel.press(3);
    expect(phase()).toBe('arming');
  });

  test('without paddles repeat and feedback answer in their place', () => {
    const { wheel, told, until } = drive(
      { 3: 'next', 4: 'repeat', 6: 'feedback' },
      { asksRating: true },
    );
    until(({ rating }) => rating !== null);
    wheel.press(4);
    wheel.press(6);
    expect(told.ratings).toEqual(['early heavy']);
  });

  test('paddles still shift while a rep is driven', () => {
    const { wheel, told, until } = drive(JOBS, { asksRating: true });
    until(({ phase }) => phase === 'braking');
    const before = told.view?.gear ?? 0;
    wheel.press(1);
    expect(told.view?.gear).toBe(before + 1);
  });
});

describe('the display settings without a keyboard', () => {
  const settled = () => {
    const driven = drive({ ...JOBS, 10: 'display' });
    driven.until(({ phase }) => phase === 'countdown');
    driven.wheel.press(10);
    return driven;
  };

  test('paddles move, next changes, the same button closes and the drill goes on', () => {
    const { wheel, told, phase } = settled();
    expect(told.view).toMatchObject({ phase: 'paused', menuRow: 0 });
    wheel.press(3);
    expect(told.view?.display.layout).toBe('stacked');
    wheel.press(1);
    wheel.press(1);
    wheel.press(3);
    wheel.press(2);
    wheel.press(3);
    expect(told.view).toMatchObject({ menuRow: 1, display: { zoom: 2, previewS: 2 } });
    wheel.press(10);
    expect(told.view?.menuRow).toBeNull();
    expect(phase()).not.toBe('paused');
  });

  test('finish closes the list, and only the list', () => {
    const { wheel, told } = settled();
    wheel.press(9);
    expect(told.view).toMatchObject({ menuRow: null });
    expect(told.view?.phase).not.toBe('summary');
  });
});

describe('a list without a keyboard', () => {
  const heard = (jobs: Readonly<Record<number, ButtonAction>>, presses: readonly number[]) => {
    const wheel = new PressedButtons();
    const keys: string[] = [];
    const source = { kind: 'hid', source: wheel.source, rig: rigWithJobs(jobs) } as const;
    listButtons(source).subscribe((key) => keys.push(key));
    for (const button of presses) wheel.press(button);
    return keys;
  };

  test('paddles go up and down, next chooses, finish leaves', () => {
    expect(heard(JOBS, [1, 2, 4, 3, 9])).toEqual(['down', 'up', 'choose', 'finish']);
  });

  test('without paddles repeat goes down', () => {
    expect(heard({ 3: 'next', 4: 'repeat' }, [4, 4, 3])).toEqual(['down', 'down', 'choose']);
  });
});

test('buttons of a simulated wheel are not named: nobody can press them', () => {
  const rig = rigWithJobs(PADDLES);
  expect(pressableButtons({ kind: 'virtual', rig })).toEqual([]);
  expect(pressableButtons({ kind: 'hid', rig }).map(({ control }) => control)).toEqual([
    'right paddle',
    'left paddle',
  ]);
});
