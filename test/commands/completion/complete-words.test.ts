import { describe, expect, test } from 'vitest';
import type { Command } from '../../../src/commands/command.ts';
import { completeWords, type NameSource } from '../../../src/commands/completion/complete-words.ts';

const commandOf = (
  name: string,
  positionals: string,
  options: Command['options'] = {},
): { name: string; summary: string; load: () => Promise<Command> } => {
  const summary = `about ${name}`;
  const run = async (): Promise<number> => 0;
  return {
    name,
    summary,
    load: async () => ({ name, summary, positionals, options, examples: [], run }),
  };
};

const CATALOGUE = [
  commandOf('drill', '[CORNER]', {
    car: { type: 'string', value: 'C', help: 'a car' },
    foot: { type: 'string', value: 'left|right', help: 'a foot' },
    headless: { type: 'boolean', help: 'no screen' },
    reps: { type: 'string', value: 'N', help: 'reps' },
    record: { type: 'string', value: 'FILE', help: 'to a file' },
  }),
  commandOf('car list', ''),
  commandOf('car show', 'CAR'),
  commandOf('trace import', 'FILE.csv'),
  commandOf('trace zones', '[NAME]'),
  commandOf('help', '[TOPIC|COMMAND|json COMMAND]'),
];

const IDS: Readonly<Record<string, readonly string[]>> = {
  cars: ['gt', 'prototype'],
  targets: ['hairpin'],
  corners: ['coil-bend', 'kiln-hairpin'],
};

const NAMES: NameSource = {
  profileIds: async (folder, dataDir) =>
    dataDir === null ? (IDS[folder] ?? []) : [`of-${dataDir}`],
  traceNames: async () => ['friday', 'saturday'],
  topics: async () => ['drill', 'files', 'json'].map((word) => ({ word, help: `on ${word}` })),
  answering: async () => ['drill', 'car list', 'trace zones'],
};

const words = async (line: string): Promise<readonly string[]> =>
  (await completeWords(line.split(' '), CATALOGUE, NAMES)).map(({ word }) => word);

describe('completion offers', () => {
  test.each([
    ['', ['drill', 'car', 'trace', 'help']],
    ['help ', ['drill', 'files', 'json', 'car', 'trace', 'help']],
    ['help c', ['car']],
    ['help car ', ['list', 'show']],
    ['help files ', []],
    ['help drill ', []],
    ['help json ', ['drill', 'car', 'trace']],
    ['help json car ', ['list']],
    ['help json trace z', ['zones']],
    ['help json drill ', []],
    ['help --v', ['--version']],
    ['c', ['car']],
    ['car ', ['list', 'show']],
    ['car s', ['show']],
    ['--n', ['--no-color']],
    ['drill --he', ['--headless', '--help']],
    ['drill --headless --he', ['--help']],
    ['drill --foot ', ['left', 'right']],
    ['drill --foot=r', ['--foot=right']],
    ['drill --units i', ['imperial']],
    ['drill --car ', ['gt', 'prototype']],
    ['drill --reps ', []],
    ['drill ', ['hairpin', 'coil-bend', 'kiln-hairpin']],
    ['drill --data-dir D --car ', ['of-D']],
    ['car show p', ['prototype']],
    ['trace zones s', ['saturday']],
  ])('after %j: %j', async (line, expected) => {
    expect(await words(line)).toEqual(expected);
  });

  test.each([['drill --record '], ['trace import '], ['car show ./m'], ['drill mine']])(
    'files after %j',
    async (line) => {
      expect(await words(line)).toEqual([':files']);
    },
  );

  test('nothing after what is no command', async () => {
    expect(await words('nonsense ')).toEqual([]);
    expect(await words('nonsense car ')).toEqual([]);
  });

  test('what help says of it', async () => {
    expect(await completeWords(['drill', '--hea'], CATALOGUE, NAMES)).toEqual([
      { word: '--headless', help: 'no screen' },
    ]);
  });
});
