import { parseArgs } from 'node:util';
import { Problem } from '../problem.ts';
import type { Command, CommandInput, OptionSpec } from './command.ts';

/** Options every command takes. */
export const GLOBAL_OPTIONS: Readonly<Record<string, OptionSpec>> = {
  units: { type: 'string', value: 'metric|imperial', help: 'units on the screen (default metric)' },
  'data-dir': {
    type: 'string',
    value: 'DIR',
    help: 'folder for history and rig',
  },
  'no-color': { type: 'boolean', help: 'no colour; NO_COLOR does the same' },
  help: { type: 'boolean', help: 'show this help' },
  version: { type: 'boolean', help: 'show the version' },
};

/** @throws Problem (exit code 2) for an unknown option, a missing value or a value where none belongs. */
export function parseOptions(
  argv: readonly string[],
  command: Pick<Command, 'name' | 'options'>,
): CommandInput {
  try {
    const { positionals, values } = parseArgs({
      args: [...argv],
      options: parseArgsConfig({ ...command.options, ...GLOBAL_OPTIONS }),
      allowPositionals: true,
    });
    return { positionals, values: values as CommandInput['values'] };
  } catch (error) {
    throw new Problem(firstSentence(String((error as Error).message)), {
      ...(command.name === '' ? {} : { where: command.name }),
      next: `See \`ebbline ${command.name} --help\` for its options.`.replace(
        'ebbline  --',
        'ebbline --',
      ),
      exitCode: 2,
    });
  }
}

type ParseArgsOption = { type: 'string' | 'boolean'; multiple?: boolean; short?: string };

function parseArgsConfig(
  options: Readonly<Record<string, OptionSpec>>,
): Record<string, ParseArgsOption> {
  return Object.fromEntries(
    Object.entries(options).map(([name, { type, multiple }]) => [
      name,
      { type, multiple: multiple ?? false, ...(name === 'help' ? { short: 'h' } : {}) },
    ]),
  );
}

function firstSentence(text: string): string {
  return text.split(/\.\s/)[0]?.replace(/\.$/, '') ?? text;
}
