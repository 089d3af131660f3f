import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { run, type Terminal } from '../../src/commands/run.ts';

function fakeTerminal(
  env: Record<string, string> = {},
): Terminal & { stdout: string; stderr: string } {
  const terminal = {
    stdout: '',
    stderr: '',
    out: (text: string) => {
      terminal.stdout += text;
    },
    err: (text: string) => {
      terminal.stderr += text;
    },
    env,
    interactive: false,
    platform: 'linux' as const,
  };
  return terminal;
}

/** A file, where a folder is asked for. */
const FILE = fileURLToPath(import.meta.url);

describe('the command line', () => {
  test('prints help when there is no terminal to drill on', async () => {
    const terminal = fakeTerminal();
    expect(await run([], terminal)).toBe(0);
    expect(terminal.stdout).toContain('usage: ebbline [COMMAND] [OPTIONS]');
    expect(terminal.stderr).toBe('');
  });

  test('takes the options of every command before it as well', async () => {
    const terminal = fakeTerminal();
    const argv = ['--units', 'imperial', '--no-color', '--data-dir=/nowhere', 'car', 'show', 'gt'];
    expect(await run(argv, terminal)).toBe(0);
    expect(terminal.stdout).toContain('2866 lb');
  });

  test.each([
    [['--data-dir', '/nowhere', 'dril'], 'there is no command "dril"', 'ebbline drill'],
    [['--no-color', 'rig'], 'rig needs to know what to do', 'rig setup'],
    [['--no-color', 'rig', 'chek', '--seconds', '3'], 'rig has no chek', 'rig check'],
  ])('%j: a slip behind such options is told as well', async (argv, what, next) => {
    const terminal = fakeTerminal();
    expect(await run(argv, terminal)).toBe(2);
    expect(terminal.stderr).toContain(what);
    expect(terminal.stderr).toContain(next);
    expect(terminal.stdout).toBe('');
  });

  test.each([
    [['--units', 'foo'], '--units: "foo" is not a set of units', 'Say metric or imperial.'],
    [['--units='], '--units: "" is not a set of units', 'Say metric or imperial.'],
    [['--data-dir', ''], '--data-dir: it is empty', 'leave it out'],
    [['--data-dir', FILE], `--data-dir: ${JSON.stringify(FILE)} is a file`, 'Name the folder'],
    [['note', 'list', '--data-dir', ''], '--data-dir: it is empty', 'leave it out'],
    [['note', 'list', '--data-dir', FILE], 'is a file', 'Name the folder'],
  ])('%j: an option of every command that cannot be is one error', async (argv, what, next) => {
    const terminal = fakeTerminal();
    expect(await run(argv, terminal)).toBe(2);
    expect(terminal.stderr).toContain(what);
    expect(terminal.stderr).toContain(next);
    expect(terminal.stdout).toBe('');
  });

  test('help is not refused for them', async () => {
    for (const argv of [
      ['--units', 'foo', '--help'],
      ['drill', '--units', 'foo', '--help'],
      ['--units', 'imperial'],
    ]) {
      const terminal = fakeTerminal();
      expect(await run(argv, terminal)).toBe(0);
      expect(terminal.stdout).toContain('usage: ebbline');
    }
  });

  test.each([
    ['compare', 'Did you mean `ebbline trace compare`?'],
    ['setup', 'Did you mean `ebbline rig setup`?'],
    ['derive', 'Did you mean `ebbline target derive`?'],
    ['show', '`ebbline car show` or `ebbline corner show` or '],
    ['dirll', 'Did you mean `ebbline drill`?'],
  ])('the second word of a command alone is told with its first: %s', async (word, meant) => {
    const terminal = fakeTerminal();
    expect(await run([word], terminal)).toBe(2);
    expect(terminal.stderr).toContain(meant);
  });

  test('prints its version as one line', async () => {
    const terminal = fakeTerminal();
    expect(await run(['--version'], terminal)).toBe(0);
    expect(terminal.stdout).toMatch(/^\d+\.\d+\.\d+\n$/);
  });

  test('an unknown option is wrong usage and names the option', async () => {
    const terminal = fakeTerminal();
    expect(await run(['--colour'], terminal)).toBe(2);
    expect(terminal.stderr).toContain("'--colour'");
    expect(terminal.stdout).toBe('');
  });

  test.each([
    [['progress', '--weeks', '-1'], '--weeks: "-1"', 'a whole number from 1 to 5200'],
    [['drill', 'hairpin', '--reps', '-3'], '--reps: "-3"', 'a whole number from 1 to 1000'],
    [['rig', 'check', '--seconds', '-.5'], '--seconds: "-.5"', 'up to 3600'],
    [['corner', 'new', 'X', '--turn-deg', '-90'], '--turn-deg', 'from 10 to 300'],
    [['drill', 'hairpin', '--target', '--headless'], '--target: it needs a value', '--target T'],
    [['progress', '--weeks'], '--weeks: it needs a value', 'only the last N weeks'],
  ])('%j is wrong usage, and says what is allowed', async (argv, what, next) => {
    const terminal = fakeTerminal();
    const rest = ['--approach-kmh', '200', '--slowest-kmh', '95', '--zone-m', '120', '--gear', '3'];
    const more = argv.includes('new') ? rest : [];
    expect(await run([...argv, ...more, '--data-dir=/nowhere'], terminal)).toBe(2);
    expect(terminal.stderr).toContain(what);
    expect(terminal.stderr).toContain(next);
    expect(terminal.stderr).not.toContain('ambiguous');
  });

  test('an unknown command says so on stderr', async () => {
    const terminal = fakeTerminal();
    expect(await run(['progess'], terminal)).toBe(2);
    expect(terminal.stderr).toContain('there is no command "progess"');
  });
});
