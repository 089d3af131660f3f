import { describe, expect, test } from 'vitest';
import type { DrillSetup } from '../../src/drill/drill-setup.ts';
import { PLAIN_KEYS, plainKey } from '../../src/drill/plain/plain-key.ts';
import { plainSentences, type Said } from '../../src/drill/plain/plain-sentences.ts';
import { plainText } from '../../src/drill/plain/plain-text.ts';
import { viewOf } from '../../src/drill/view-of.ts';
import { APPROACH, withLive } from '../screens/live/sample-live.ts';
import { CUE_S, feed, fresh, say as message, RAMP, type Script, START_S } from './drill-rig.ts';

const good: Script = { brake: (t) => RAMP.level.at(t - START_S) };

/** All that is said from the start to `toS`, a view every 8 ms, keys pressed at their times. */
function heard(
  toS: number,
  change: Partial<DrillSetup> = {},
  keys: readonly (readonly [atS: number, action: 'pause' | 'high' | 'low' | 'note'])[] = [],
): string[] {
  let fed = { model: fresh(change), effects: [] as never[] } as ReturnType<typeof feed>;
  let said: Said | null = null;
  const lines: string[] = [];
  const listen = (): void => {
    const [sentences, next] = plainSentences(said, viewOf(fed.model));
    said = next;
    lines.push(...sentences);
  };
  for (let fromS = 0; fromS < toS; fromS += 0.008) {
    fed = feed(fed.model, good, { fromS, toS: fromS + 0.008 });
    listen();
    for (const [atS, action] of keys)
      if (atS > fromS && atS <= fromS + 0.008) {
        fed = message(fed, { kind: 'key', action });
        listen();
      }
  }
  return lines;
}

describe('a rep in sentences', () => {
  test('each event is said once, and nothing while the foot works', () => {
    expect(heard(CUE_S + 0.05)).toEqual([
      'Rep 1 of 10, shown. Foot off the brake.',
      '3',
      '2',
      '1',
      'Brake.',
    ]);
    expect(heard(START_S + 1.5)).toHaveLength(5);
    expect(heard(START_S + 8).slice(5)).toEqual([
      'Rep over.',
      'Rest 5 seconds; Enter comes sooner.',
    ]);
  });

  test('the questions come one after the other, then what was answered', () => {
    const lines = heard(START_S + 5, { asksRating: true }, [
      [START_S + 2.5, 'high'],
      [START_S + 3, 'low'],
    ]);
    expect(lines.slice(5)).toEqual([
      'When did you release? 1 early, 2 right, 3 late; Enter leaves it out.',
      'How much pressure? 1 light, 2 right, 3 heavy.',
      'Felt late in time and light in pressure.',
    ]);
  });

  test('a learned button stands beside its key', () => {
    const buttons = [
      { action: 'next', control: 'wheel button 4' },
      { action: 'upshift', control: 'right paddle' },
    ] as const;
    const lines = heard(START_S + 8, { asksRating: true, buttons });
    expect(lines).toContain(
      'When did you release? 1 early, 2 or B4 right, 3 or right paddle late; Enter leaves it out.',
    );
    expect(heard(START_S + 8, { buttons })).toContain('Rest 5 seconds; Enter or B4 comes sooner.');
  });

  test('a message is said once, and again only after a while', () => {
    const twice = heard(2.5, {}, [
      [1, 'pause'],
      [1.2, 'pause'],
      [1.4, 'pause'],
    ]);
    expect(twice.filter((line) => line.startsWith('Paused'))).toHaveLength(1);
    const later = heard(6.5, {}, [
      [1, 'pause'],
      [1.2, 'pause'],
      [5, 'pause'],
    ]);
    expect(later.filter((line) => line.startsWith('Paused'))).toHaveLength(2);
  });

  test('a note is asked for once', () => {
    const lines = heard(START_S + 9, {}, [[START_S + 8, 'note']]);
    expect(lines.slice(-1)).toEqual([
      'Note on rep 1: type it and press Enter; Enter alone leaves the mark.',
    ]);
  });

  test('boards of the live car are said as they are passed', () => {
    const at = (placeM: number) => withLive({ ...APPROACH, placeM }, { phase: 'cue' });
    const boards = APPROACH.marks.filter(({ kind }) => kind === 'board');
    const { sM, word } = boards[0]!;
    const [, before] = plainSentences(null, at(sM - 1));
    const [passed, said] = plainSentences(before, at(sM + 0.5));
    expect(passed).toEqual([`${word}.`]);
    expect(plainSentences(said, at(sM + 1))[0]).toEqual([]);
  });
});

describe('lines as they are read out', () => {
  test.each([
    [
      'rep  1  shown         score  83  release  82  hit  80  smooth  91  re-applied 1  9 % too quick',
      'rep 1, shown, score 83, release 82, hit 80, smooth 91, re-applied 1, 9 % too quick',
    ],
    [
      'Kiln hairpin  rep  1  shown         does not count (aborted)  Aborted by the driver.',
      'Kiln hairpin, rep 1, shown, does not count (aborted), Aborted by the driver.',
    ],
    ['block  10 reps scored  median score 73', 'block, 10 reps scored, median score 73'],
    [
      '  hit          -3.2 % (-5.2 to -1.2)   3.9 %   rate, 0.04 s slow in 3 of 10',
      'hit, -3.2 % (-5.2 to -1.2), 3.9 %, rate, 0.04 s slow in 3 of 10',
    ],
  ])('%s', (line, text) => {
    expect(plainText(line)).toBe(text);
  });
});

test('typed lines are keys or their words', () => {
  expect(['', ' R ', 'p', 'next', 'self-rating', '2', 'Q'].map(plainKey)).toEqual([
    'next',
    'repeat',
    'pause',
    'next',
    'self-rating',
    'middle',
    'finish',
  ]);
  expect(plainKey('?')).toBe('help');
  expect([plainKey('x'), plainKey('space bar'), plainKey('display')]).toEqual([null, null, null]);
  for (const line of PLAIN_KEYS)
    expect(plainKey(line.split(':')[0]!.split(',')[0]!)).not.toBeUndefined();
});
