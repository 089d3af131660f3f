import type { CatalogueEntry } from './catalogue.ts';
import type { Command, OptionSpec } from './command.ts';
import { GLOBAL_OPTIONS } from './options.ts';

/** What `ebbline --help` prints. */
export function overview(catalogue: readonly Pick<CatalogueEntry, 'name' | 'summary'>[]): string {
  const width = Math.max(0, ...catalogue.map(({ name }) => name.length));
  return [
    'ebbline: drill brake release on your own pedals against a target curve',
    '',
    'usage: ebbline [COMMAND] [OPTIONS]',
    '       ebbline            on a terminal: choose a corner and drill',
    '',
    'commands:',
    ...catalogue.map(({ name, summary }) => `  ${name.padEnd(width)}  ${summary}`),
    '',
    'options of every command:',
    ...optionLines(GLOBAL_OPTIONS),
    '',
    'A training aid, not driving instruction. `ebbline COMMAND --help` and `ebbline help` say more.',
    '',
  ].join('\n');
}

/** What `ebbline COMMAND --help` prints. */
export function commandHelp(command: Command): string {
  const own = optionLines(command.options);
  return [
    `ebbline ${command.name}: ${command.summary}`,
    '',
    ...command.examples.map((example, i) => `${i === 0 ? 'examples: ' : '          '}${example}`),
    ...(command.examples.length > 0 ? [''] : []),
    `usage: ebbline ${command.name}${command.positionals === '' ? '' : ` ${command.positionals}`} [OPTIONS]`,
    '',
    ...(own.length > 0 ? ['options:', ...own, ''] : []),
    'options of every command:',
    ...optionLines(GLOBAL_OPTIONS),
    '',
  ].join('\n');
}

function optionLines(options: Readonly<Record<string, OptionSpec>>): string[] {
  const rows = Object.entries(options).map(([name, { value, help }]) => ({
    left: `--${name}${value === undefined ? '' : ` ${value}`}`,
    help,
  }));
  const width = Math.max(0, ...rows.map(({ left }) => left.length));
  return rows.map(({ left, help }) => `  ${left.padEnd(width)}  ${help}`);
}
