import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../src/commands/catalogue.ts';
import { HELP_TOPICS } from '../src/commands/help-topics.ts';
import { parseOptions } from '../src/commands/options.ts';

const PAGES = ['README.md', 'profiles/README.md', 'DEVELOPERS.md'];

/** Every call of the program that a page shows: indented lines and code in the text. */
function callsOf(page: string): readonly string[] {
  const text = readFileSync(new URL(`../${page}`, import.meta.url), 'utf8');
  const shown = [...text.matchAll(/^ {4}.*$|`[^`\n]*`/gm)].map(([code]) => code);
  return shown.flatMap((code) =>
    [...code.matchAll(/\bebbline ([^`|<>#&)]*)/g)].map(([, call]) => (call ?? '').trim()),
  );
}

const wordsOf = (call: string): string[] =>
  [...call.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');

const commandOf = (words: readonly string[]): (typeof CATALOGUE)[number] | undefined =>
  [2, 1]
    .map((count) => CATALOGUE.find(({ name }) => name === words.slice(0, count).join(' ')))
    .find((entry) => entry !== undefined);

describe.each(PAGES)('%s', (page) => {
  test.each(callsOf(page))('ebbline %s', async (call) => {
    const words = wordsOf(call);
    // the bare program, options of every command, groups and placeholders are no call of one command
    const isCall = words[0] !== undefined && /^[a-z]/.test(words[0]);
    const group = CATALOGUE.some(({ name }) => name.startsWith(`${call} `));
    if (!isCall || group) return;
    if (words[0] === 'help' && HELP_TOPICS.some(({ name }) => name === words[1])) return;
    const entry = commandOf(words);
    expect(entry, call).toBeDefined();
    const command = await entry!.load();
    expect(() => parseOptions(words.slice(command.name.split(' ').length), command)).not.toThrow();
  });
});

test('the README shows calls at all', () => {
  expect(callsOf('README.md').length).toBeGreaterThan(40);
});
