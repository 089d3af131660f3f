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

test.each(CATALOGUE)('help of $name fits 80 columns and keeps its words whole', async (entry) => {
  const { stdout } = await runCommand([...entry.name.split(' '), '--help']);
  const options = stdout.slice(stdout.search(/^options/m));
  expect(options.split('\n').filter((line) => line.length > 80)).toEqual([]);
  const words = options.split(/\s+/);
  for (const [name, { help }] of Object.entries((await entry.load()).options)) {
    expect(words).toContain(`--${name}`);
    for (const word of help.split(' ')) expect(words).toContain(word);
  }
});

const GROUPS = new Set(
  CATALOGUE.flatMap(({ name }) => (name.includes(' ') ? [name.split(' ')[0]!] : [])),
);

test.each([...GROUPS])('%s --help lists the commands of the group', async (group) => {
  const { code, stdout, stderr } = await runCommand([group, '--help']);
  expect([code, stderr]).toEqual([0, '']);
  const listed = [...stdout.matchAll(/^ {2}(\w+ \w+) {2,}/gm)].map(([, name]) => name);
  expect(listed).toEqual(
    CATALOGUE.filter(({ name }) => name.startsWith(`${group} `)).map(({ name }) => name),
  );
  expect(stdout.split('\n').filter((line) => line.length > 80)).toEqual([]);
  expect((await runCommand(['help', group])).stdout).toBe(stdout);
});

test('a group asked for a command that it has not is refused, --help or not', async () => {
  const { code, stderr } = await runCommand(['car', 'shwo', '--help']);
  expect(code).toBe(2);
  expect(stderr).toContain('car has no shwo');
});
