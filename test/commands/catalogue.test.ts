import { expect, test } from 'vitest';
import { CATALOGUE } from '../../src/commands/catalogue.ts';
import { COMMAND_FILES } from '../../src/commands/command-files.ts';
import { runCommand } from './run-command.ts';

test('every command that there is stands in one group, once', () => {
  const names = CATALOGUE.map(({ name }) => name);
  expect(names.toSorted()).toEqual(Object.keys(COMMAND_FILES).toSorted());
});

test('help fits 80 columns, every summary beside its name', async () => {
  const { stdout } = await runCommand(['--help']);
  expect(stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
  const rows = stdout.replace(/\n {19}(?=\S)/g, ' ');
  for (const { name, summary } of CATALOGUE)
    expect(rows).toContain(`\n  ${name.padEnd(15)}  ${summary}\n`);
});

test('so does the help of a command with long options', async () => {
  const { stdout } = await runCommand(['drill', '--help']);
  const options = stdout.slice(stdout.indexOf('options:'));
  expect(options.split('\n').filter((line) => line.length > 80)).toEqual([]);
});
