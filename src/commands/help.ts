import { wrapWords } from '../screens/progress/wrap-words.ts';
import type { CommandGroup } from './catalogue.ts';
import type { Command, OptionSpec } from './command.ts';
import { GLOBAL_OPTIONS } from './options.ts';

const COLS = 80;
/** A longer one has a line to itself, and leaves the others room for their words. */
const WIDEST_NAME = 32;

/** What `ebbline --help` prints. */
export function overview(groups: readonly CommandGroup[]): string {
  const names = groups.flatMap(({ commands }) => commands.map(({ name }) => name));
  const width = Math.max(0, ...names.map((name) => name.length));
  return [
    'ebbline: drill brake release on your own pedals against a target curve',
    '',
    'usage: ebbline [COMMAND] [OPTIONS]',
    '       ebbline            on a terminal: choose a corner and drill',
    ...groups.flatMap(({ heading, commands }) => [
      '',
      `${heading}:`,
      ...commands.flatMap(({ name, summary }) => row(name, width, summary)),
    ]),
    '',
    'options of every command:',
    ...optionLines(GLOBAL_OPTIONS),
    '',
    'A training aid, not driving instruction. `ebbline COMMAND --help` and',
    '`ebbline help` say more.',
    '',
  ].join('\n');
}

/** What `ebbline car --help` prints: the commands whose names begin so. */
export function groupHelp(
  group: string,
  commands: readonly { readonly name: string; readonly summary: string }[],
): string {
  const width = Math.max(0, ...commands.map(({ name }) => name.length));
  return [
    `usage: ebbline ${group} COMMAND [OPTIONS]`,
    '',
    'commands:',
    ...commands.flatMap(({ name, summary }) => row(name, width, summary)),
    '',
    `\`ebbline ${commands[0]?.name ?? group} --help\` says more of one.`,
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
  const lengths = rows.map(({ left }) => left.length).filter((length) => length <= WIDEST_NAME);
  return rows.flatMap(({ left, help }) => row(left, Math.max(0, ...lengths), help));
}

/** What has a name or an option before it stays in a column of its own, on as many lines as it takes. */
function row(name: string, width: number, text: string): string[] {
  const lines = wrapWords(text, COLS - width - 4);
  const own = name.length > width ? [`  ${name}`] : [];
  return [
    ...own,
    ...lines.map((line, i) => {
      const left = i === 0 && own.length === 0 ? name : '';
      return `  ${left.padEnd(width)}  ${line}`;
    }),
  ];
}
