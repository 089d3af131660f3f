import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { HELP_WORDS } from '../../src/commands/help-words.ts';
import { runCommand } from './run-command.ts';

const words = HELP_WORDS.map(([word]) => word);

/** Words of the trade and of statistics that stand on screens and pages without a word of explanation beside them. */
const UNEXPLAINED = [
  ...['in band', 'rms', 'median', 'spread', 'likely', 'corridor', 're-applied', 'hidden', 'shown'],
  ...['average error', 'first-of-day', 'phase', 'hard reps', 'warm-up', 'carry-over', 'aborted'],
  ...['CUSUM', 'EWMA', 'typical error', 'agreement', 'rear margin', 'trail braking', 'jitter'],
  ...[
    'drift',
    'noise',
    'count',
    'cue',
    'dropped',
    'g-g diagram',
    'grip used',
    'slowest',
    'over-rev',
  ],
];

/** All that the drill shows in its sample states. */
const SCREENS = ['../screens/golden', '../screens/live/golden']
  .flatMap((folder) => {
    const path = new URL(folder, import.meta.url).pathname;
    return readdirSync(path).map((name) => readFileSync(`${path}/${name}`, 'utf8'));
  })
  .join('\n');

describe('help on words', () => {
  test.each(UNEXPLAINED)('tells what %s is', async (word) => {
    expect(words).toContain(word);
    const { stdout } = await runCommand(['help', 'words']);
    expect(stdout).toMatch(new RegExp(`^${word} {2,}\\S`, 'm'));
  });

  test('has them in the order of the alphabet, each once', () => {
    const plain = words.map((word) => word.toLowerCase().replace(/[^a-z]/g, ''));
    expect(plain).toEqual([...new Set(plain)].sort());
  });

  test('has every part of the score and every cause that the drill names', () => {
    for (const word of ['release', 'hit', 'smooth', 'brake point', 'timing', 'rate', 'amount']) {
      expect(SCREENS).toContain(word);
      expect(words).toContain(word);
    }
  });
});

test('help on the score tells what in band is', async () => {
  const { stdout } = await runCommand(['help', 'score']);
  expect(stdout).toMatch(/^in band +\S/m);
});
