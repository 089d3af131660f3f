import { expect, test } from 'vitest';
import { afterDrill } from '../../src/commands/after-drill.ts';
import { CATALOGUE } from '../../src/commands/catalogue.ts';
import { drillIt } from '../../src/commands/drill-it.ts';
import { parseOptions } from '../../src/commands/options.ts';
import { runCommand } from './run-command.ts';

/** What the shell makes of a command line without variables: single quotes keep all but themselves (POSIX, 2.2). */
function shellWords(line: string): readonly string[] {
  const words = line.match(/(?:'[^']*'|\\'|[^\s'])+/g) ?? [];
  return words.map((word) =>
    word.replaceAll("'\\''", '\0').replaceAll("'", '').replaceAll('\0', "'"),
  );
}

async function parse(line: string) {
  const [program, name, ...rest] = shellWords(line);
  expect(program).toBe('ebbline');
  const command = await CATALOGUE.find((entry) => entry.name === name)!.load();
  return parseOptions(rest, command);
}

test('commands named after a drill can be typed', async () => {
  const lines = afterDrill(3).flatMap((line) => /ebbline .*$/.exec(line)?.[0] ?? []);
  expect(lines).toHaveLength(2);
  for (const line of lines) await parse(line);
  expect(afterDrill(null)).toEqual([]);
});

test('what was shown can be drilled by the last line, whatever its file is called', async () => {
  const said = drillIt('--target', "./Kim's own.yaml").trim().replace('Drill it: ', '');
  expect((await parse(said)).values.target).toBe("./Kim's own.yaml");
});

test.each([
  [['plan', 'show', 'maintenance'], 'ebbline drill --plan maintenance'],
  [
    ['event', 'show', 'sallow-fen', '--session', 'race'],
    'ebbline drill --event sallow-fen --session race',
  ],
  [['target', 'show', 'hairpin'], 'ebbline drill --target hairpin'],
  [
    ['corner', 'show', 'coil-bend', '--variant', 'wet', '--car', 'gt'],
    'ebbline drill --corner coil-bend --car gt --variant wet',
  ],
])('%j ends with how to drill it', async (argv, line) => {
  const { stdout } = await runCommand(argv);
  expect(stdout.endsWith(`\nDrill it: ${line}\n`)).toBe(true);
});
