import type { KeyAction } from '../drill-message.ts';

const KEYS: readonly (readonly [key: string, action: KeyAction, what: string])[] = [
  ['', 'next', 'Enter: next rep or next block'],
  ['r', 'repeat', 'r: repeat this rep'],
  ['p', 'pause', 'p: pause, or go on'],
  ['f', 'feedback', 'f: own trace shown, or hidden'],
  ['n', 'note', 'n: mark the last rep; between reps also a few words'],
  ['s', 'self-rating', 's: be asked how each rep felt, or not'],
  ['1', 'low', '1, 2, 3: answers to that; Enter leaves it out'],
  ['2', 'middle', ''],
  ['3', 'high', ''],
  ['q', 'finish', 'q: finish'],
];

/** What a typed line asks for: a key or its word; `help` for the list of keys, null for anything else. */
export function plainKey(line: string): KeyAction | 'help' | null {
  const word = line.trim().toLowerCase();
  if (word === '?' || word === 'help') return 'help';
  return KEYS.find(([key, action]) => word === key || word === action)?.[1] ?? null;
}

/** The keys, a line each. */
export const PLAIN_KEYS: readonly string[] = [
  ...KEYS.map(([, , what]) => what).filter((what) => what !== ''),
  '?: these keys',
];
