import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/commands/catalogue.ts';
import { HELP_TOPICS } from '../../src/commands/help-topics.ts';
import { parseOptions } from '../../src/commands/options.ts';
import { runCommand } from './run-command.ts';

/** The words of an example after the program's name, up to a pipe, a redirection or a comment. */
function wordsOf(example: string): readonly string[] {
  const call = /\bebbline ([^|<>#&)]*)/.exec(example)?.[1] ?? '';
  return [...call.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');
}

describe('help', () => {
  test('lists its topics', async () => {
    const { code, stdout } = await runCommand(['help']);
    expect(code).toBe(0);
    for (const { name } of HELP_TOPICS) expect(stdout).toContain(`  ${name} `);
    expect(stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
  });

  test.each(HELP_TOPICS)('on $name fits 80 columns', async ({ name }) => {
    const { code, stdout } = await runCommand(['help', name]);
    expect(code).toBe(0);
    const lines = stdout.split('\n');
    expect(lines.length).toBeGreaterThan(4);
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
  });

  test('on the score calls it provisional', async () => {
    expect((await runCommand(['help', 'score'])).stdout).toContain('provisional');
  });

  test("on a command is that command's help", async () => {
    const [help, own] = [
      await runCommand(['help', 'rig', 'setup']),
      await runCommand(['rig', 'setup', '--help']),
    ];
    expect(help.stdout).toBe(own.stdout);
    expect(own.stdout).toContain('usage: ebbline rig setup');
  });

  test.each([
    ['scroe', 'Did you mean score?'],
    ['xyzzy', '`ebbline help` lists topics'],
  ])('on %s says what there is', async (wanted, next) => {
    const { code, stderr } = await runCommand(['help', wanted]);
    expect(code).toBe(2);
    expect(stderr).toContain(next);
  });
});

describe('every command', () => {
  test.each(CATALOGUE)(
    '$name has examples that its parser takes',
    async ({ name, summary, load }) => {
      const command = await load();
      expect(command).toMatchObject({ name, summary });
      expect(command.examples.length).toBeGreaterThan(0);
      for (const example of command.examples) {
        const words = wordsOf(example);
        expect(words.slice(0, name.split(' ').length).join(' '), example).toBe(name);
        expect(() => parseOptions(words, command), example).not.toThrow();
      }
    },
  );

  test('names the option that a mistyped one may stand for', async () => {
    const { code, stderr } = await runCommand(['drill', '--headles']);
    expect(code).toBe(2);
    expect(stderr).toContain('Did you mean --headless?');
  });
});
