import { parseArgs } from 'node:util';
import { Problem } from '../problem.ts';
import type { Command, CommandInput, OptionSpec } from './command.ts';
import { optionMeant } from './option-meant.ts';
import { refuseApart } from './refuse-apart.ts';

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

/** @throws Problem (exit code 2) for an unknown option, a missing value, a value where none belongs, or options apart. */
export function parseOptions(
  argv: readonly string[],
  command: Pick<Command, 'name' | 'options' | 'apart'>,
): CommandInput {
  const input = parsed(argv, command);
  if (input.values.help !== true && input.values.version !== true)
    refuseApart(input.values, command);
  return input;
}

function parsed(argv: readonly string[], command: Pick<Command, 'name' | 'options'>): CommandInput {
  const options = { ...command.options, ...GLOBAL_OPTIONS };
  try {
    const { positionals, values } = parseArgs({
      args: withNegativeValues(argv, options),
      options: parseArgsConfig(options),
      allowPositionals: true,
    });
    return { positionals, values: values as CommandInput['values'] };
  } catch (error) {
    const without = withoutValue(error as Error & { code?: string });
    if (without !== null) throw missingValue(without, command);
    const message = String((error as Error).message);
    const meant = optionMeant(message, Object.keys(options));
    throw new Problem(firstSentence(message), {
      ...(command.name === '' ? {} : { where: command.name }),
      next: `${meant === null ? '' : `Did you mean ${meant}? `}See \`${['ebbline', command.name, '--help'].filter(Boolean).join(' ')}\` for its options.`,
      exitCode: 2,
    });
  }
}

/** The option whose value is missing, where that is what the parser found. */
function withoutValue({ code, message }: Error & { code?: string }): string | null {
  if (code !== 'ERR_PARSE_ARGS_INVALID_OPTION_VALUE') return null;
  return /argument (missing|is ambiguous)/.test(message)
    ? (/'--([\w-]+)/.exec(message)?.[1] ?? null)
    : null;
}

function missingValue(name: string, { options }: Pick<Command, 'options'>): Problem {
  const { value, help } = { ...GLOBAL_OPTIONS, ...options }[name] ?? {};
  return new Problem('it needs a value', {
    where: `--${name}`,
    next: `Say --${name} ${value ?? 'VALUE'}${help === undefined ? '' : `: ${help}`}.`,
    exitCode: 2,
  });
}

/**
 * A number below zero after an option is its value, so that the command can say what it allows: the parser itself takes
 * it for another option.
 */
function withNegativeValues(
  argv: readonly string[],
  options: Readonly<Record<string, OptionSpec>>,
): string[] {
  const args: string[] = [];
  for (const word of argv) {
    const before = args.at(-1) ?? '';
    const takesValue = before.startsWith('--') && options[before.slice(2)]?.type === 'string';
    if (takesValue && /^-[\d.]/.test(word)) args[args.length - 1] = `${before}=${word}`;
    else args.push(word);
  }
  return args;
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
