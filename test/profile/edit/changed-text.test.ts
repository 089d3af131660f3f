import { readdirSync, readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import { changedText } from '../../../src/profile/edit/changed-text.ts';
import type { ProfileChange } from '../../../src/profile/edit/profile-change.ts';

const FILE = `# About the corner.
name: "Kiln hairpin"   # shown
advice: >
  One, two,
  three.

rise: {duration_s: 0.240, shape: linear}   # quick
peak_level: 0.85

release:
  duration_s: 1.70 # long
  shape: knots
  # the knots
  knots:
    - { time_s: 0.65, level: 0.66 } # first
    - { time_s: 1.05, level: 0.35 }
    # between
    - { time_s: 1.45, level: 0.22 }

gears: [{ time_s: 0.4, gear: 4 }, { time_s: 0.8, gear: 3 }]
`;

function expectLines(changes: readonly ProfileChange[], removed: string[], added: string[]): void {
  const lines = changedText(FILE, changes).split('\n');
  const before = FILE.split('\n');
  expect(before.filter((line) => !lines.includes(line))).toEqual(removed);
  expect(lines.filter((line) => !before.includes(line))).toEqual(added);
  expect(lines.length).toBe(before.length + added.length - removed.length);
}

describe('one line changes and every other stays byte for byte', () => {
  test('another number', () => {
    expectLines(
      [{ kind: 'set', path: ['rise', 'duration_s'], value: 0.25 }],
      ['rise: {duration_s: 0.240, shape: linear}   # quick'],
      ['rise: {duration_s: 0.25, shape: linear}   # quick'],
    );
  });

  test('a number of a list', () => {
    expectLines(
      [{ kind: 'set', path: ['release', 'knots', 1, 'level'], value: 0.4 }],
      ['    - { time_s: 1.05, level: 0.35 }'],
      ['    - { time_s: 1.05, level: 0.4 }'],
    );
  });

  test('a new key behind another', () => {
    expectLines(
      [{ kind: 'add-key', path: [], key: 'hold_s', value: 0.1, after: 'peak_level' }],
      [],
      ['hold_s: 0.1'],
    );
    expect(
      changedText(FILE, [
        { kind: 'add-key', path: [], key: 'hold_s', value: 0.1, after: 'peak_level' },
      ]),
    ).toContain('peak_level: 0.85\nhold_s: 0.1\n\nrelease:');
  });

  test('a new group at the end', () => {
    const value = { floor_level: 0.02, share: 0.05 };
    const change = { kind: 'add-key', path: [], key: 'corridor', value, after: null } as const;
    expectLines([change], [], ['corridor: { floor_level: 0.02, share: 0.05 }']);
    expect(changedText(FILE, [change]).startsWith(FILE)).toBe(true);
  });

  test('a new key between brackets', () => {
    expectLines(
      [{ kind: 'add-key', path: ['gears', 1], key: 'x', value: 1, after: 'gear' }],
      ['gears: [{ time_s: 0.4, gear: 4 }, { time_s: 0.8, gear: 3 }]'],
      ['gears: [{ time_s: 0.4, gear: 4 }, { time_s: 0.8, gear: 3, x: 1 }]'],
    );
  });

  test.each([
    [0, '  knots:\n    - { time_s: 0.6, level: 0.5 }\n    - { time_s: 0.65'],
    [1, '# first\n    - { time_s: 0.6, level: 0.5 }\n    - { time_s: 1.05'],
    [3, 'level: 0.22 }\n    - { time_s: 0.6, level: 0.5 }\n\ngears'],
  ])('a new entry in front of entry %i', (index, around) => {
    const value = { time_s: 0.6, level: 0.5 };
    const change = { kind: 'add-item', path: ['release', 'knots'], index, value } as const;
    expectLines([change], [], ['    - { time_s: 0.6, level: 0.5 }']);
    expect(changedText(FILE, [change])).toContain(around);
  });

  test('an entry less, and its own comment with it', () => {
    expectLines(
      [{ kind: 'remove', path: ['release', 'knots', 0] }],
      ['    - { time_s: 0.65, level: 0.66 } # first'],
      [],
    );
  });

  test('a group less', () => {
    expectLines(
      [{ kind: 'remove', path: ['rise'] }],
      ['rise: {duration_s: 0.240, shape: linear}   # quick'],
      [],
    );
  });

  test.each([
    [0, 'gears: [{ time_s: 0.8, gear: 3 }]'],
    [1, 'gears: [{ time_s: 0.4, gear: 4 }]'],
  ])('entry %i less between brackets', (index, line) => {
    expectLines(
      [{ kind: 'remove', path: ['gears', index] }],
      ['gears: [{ time_s: 0.4, gear: 4 }, { time_s: 0.8, gear: 3 }]'],
      [line],
    );
  });
});

test('a list of groups in lines gets a group in lines', () => {
  const text = 'knots:\n  - distance_m: 3\n    level: 0.5\n  - distance_m: 1\n    level: 0.2\n';
  const value = { distance_m: 2, level: 0.3 };
  expect(changedText(text, [{ kind: 'add-item', path: ['knots'], index: 1, value }])).toBe(
    'knots:\n  - distance_m: 3\n    level: 0.5\n  - distance_m: 2\n    level: 0.3\n  - distance_m: 1\n    level: 0.2\n',
  );
});

test('a new list stands in lines', () => {
  const value = [{ time_s: 1, level: 0.5 }];
  const change = { kind: 'add-key', path: ['release'], key: 'knots', value, after: 'a' } as const;
  expect(changedText('release:\n  a: 1\n  b: 2\n', [change])).toBe(
    'release:\n  a: 1\n  knots:\n    - { time_s: 1, level: 0.5 }\n  b: 2\n',
  );
});

test('line ends of another system and a missing last one are kept', () => {
  const change = { kind: 'add-key', path: [], key: 'c', value: 3, after: null } as const;
  expect(changedText('a: 1\r\nb: 2\r\n', [change])).toBe('a: 1\r\nb: 2\r\nc: 3\r\n');
  expect(changedText('a: 1', [change])).toBe('a: 1\nc: 3\n');
});

test('a layout that cannot be cut is written anew, with its comments', () => {
  const text = '# top\na:\n  - b: 1 # one\n    c: 2\n';
  const next = changedText(text, [{ kind: 'remove', path: ['a', 0, 'b'] }]);
  expect(parse(next)).toEqual({ a: [{ c: 2 }] });
  expect(next).toContain('# top');
});

const BUNDLED = new URL('../../../profiles/targets/', import.meta.url);
const TEXTS = readdirSync(BUNDLED).map((name) => readFileSync(new URL(name, BUNDLED), 'utf8'));

/** Paths of all numbers in the data. */
function numbersIn(data: unknown, path: (string | number)[] = []): (string | number)[][] {
  if (typeof data === 'number') return [path];
  if (typeof data !== 'object' || data === null) return [];
  return Object.entries(data).flatMap(([key, value]) =>
    numbersIn(value, [...path, Array.isArray(data) ? Number(key) : key]),
  );
}

test('any number of any bundled target changes one line', () => {
  const cases = TEXTS.flatMap((text) => numbersIn(parse(text)).map((path) => ({ text, path })));
  expect(cases.length).toBeGreaterThan(100);
  fc.assert(
    fc.property(
      fc.constantFrom(...cases),
      fc.integer({ min: 1, max: 99_999 }),
      ({ text, path }, n) => {
        const before = text.split('\n');
        const after = changedText(text, [{ kind: 'set', path, value: n / 1000 }]).split('\n');
        expect(after.length).toBe(before.length);
        const other = after.filter((line, i) => line !== before[i]);
        expect(other.length).toBeLessThanOrEqual(1);
        const read = path.reduce<unknown>(
          (value, step) => (value as Record<string | number, unknown>)[step],
          parse(after.join('\n')),
        );
        expect(read).toBe(n / 1000);
      },
    ),
  );
});
