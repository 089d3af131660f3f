import { TestScheduler } from 'rxjs/testing';
import { expect, test } from 'vitest';
import { keyActions } from '../../src/screens/key-actions.ts';

const KEYS = {
  e: 'escape',
  s: 'space',
  q: 'q',
  b: '[',
  A: 'S-a',
  r: 'return',
  n: 'enter',
  c: 'C-c',
};
const ACTIONS = { x: 'close', s: 'next', q: 'finish', n: 'choose', c: 'interrupt' };

function expectActions(keys: string, actions: string): void {
  const scheduler = new TestScheduler((actual, expected) => expect(actual).toEqual(expected));
  scheduler.run(({ hot, expectObservable }) => {
    expectObservable(keyActions(hot(keys, KEYS), scheduler)).toBe(actions, ACTIONS);
  });
}

test('keys without an action are left out, and Enter counts once', () => {
  expectActions('-sb(rn)q', '-s-n---q');
});

test('Esc alone closes after 50 ms', () => {
  expectActions('-e 100ms s', '- 50ms x 50ms s');
});

test('the parts of a sequence that a slow line has split are no keys', () => {
  expectActions('-e 9ms b 9ms A 9ms q 99ms s', '- 130ms s');
});

test('a key before Esc and one after the wait are keys', () => {
  expectActions('-s 9ms e 60ms q', '-s 59ms x 10ms q');
});

test('Ctrl-C is passed on at once', () => {
  expectActions('c', 'c');
});
