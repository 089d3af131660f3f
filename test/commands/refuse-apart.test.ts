import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/commands/catalogue.ts';
import { runCommand } from './run-command.ts';

const DERIVE = ['target', 'derive', '--car', 'gt', '--corner', 'kiln-hairpin'];

describe('options of which one would be passed over', () => {
  test.each([
    [[...DERIVE, '--picture', 'gg', '--json'], '--picture', '--json'],
    [['export', '--csv', 'reps.csv', '--samples-csv'], '--samples-csv', '--csv'],
    [['brief', 'kiln-hairpin', '--car', 'gt', '--json', '--format', 'html'], '--format', '--json'],
    [['doctor', '--udev-rules', '--json'], '--udev-rules', '--json'],
    [['drill', 'hairpin', '--theme', 'light', '--headless'], '--theme', '--headless'],
    [['drill', 'hairpin', '--theme', 'light', '--plain'], '--theme', '--plain'],
    [['drill', 'hairpin', '--theme', 'light', '--json'], '--theme', '--json'],
  ])('%j is one refusal', async (call, one, other) => {
    const { code, stdout, stderr } = await runCommand(call);
    expect(stderr).toContain(`${one}: ${one} beside ${other} is not possible here\n`);
    expect(stderr).toContain('Leave one of them out.');
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  });

  test('are still explained by --help', async () => {
    expect((await runCommand(['doctor', '--udev-rules', '--json', '--help'])).code).toBe(0);
  });

  test('are options that their command has', async () => {
    for (const { load } of CATALOGUE) {
      const { options, apart = [] } = await load();
      for (const { one, others } of apart)
        for (const name of [one, ...others]) expect(options).toHaveProperty([name]);
    }
  });
});

test('either of them alone goes', async () => {
  expect((await runCommand([...DERIVE, '--json'])).code).toBe(0);
  expect((await runCommand([...DERIVE, '--picture', 'plan'])).code).toBe(0);
});
