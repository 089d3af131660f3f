import { describeProblem, Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import { CATALOGUE, type CatalogueEntry, COMMAND_GROUPS, commandsOf } from './catalogue.ts';
import type { CommandContext, CommandInput } from './command.ts';
import { defaultDataDir, givenDataDir } from './data-dir.ts';
import { commandHelp, groupHelp, overview } from './help.ts';
import { GLOBAL_OPTIONS, parseOptions } from './options.ts';
import { version } from './version.ts';

/** The part of the process a run touches; tests pass their own. */
export interface Terminal {
  out(text: string): void;
  err(text: string): void;
  readonly env: Readonly<Record<string, string | undefined>>;
  /** True where stdin and stdout are both a terminal. */
  readonly interactive: boolean;
  readonly platform: NodeJS.Platform;
}

const PROCESS_TERMINAL: Terminal = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  env: process.env,
  // asked only where it matters: opening stdin takes as long as a small command's work
  get interactive() {
    return process.stdin.isTTY === true && process.stdout.isTTY === true;
  },
  platform: process.platform,
};

/**
 * Runs one command line.
 * @returns the exit code: 0 done, 1 failed, 2 wrong usage, 70 a defect of the program.
 */
export async function run(
  argv: readonly string[],
  terminal: Terminal = PROCESS_TERMINAL,
): Promise<number> {
  try {
    return await dispatch(argv, terminal);
  } catch (error) {
    if (error instanceof Problem) {
      terminal.err(`ebbline: ${describeProblem(error)}\n`);
      return error.exitCode;
    }
    terminal.err(`ebbline: this is a defect of the program\n${stackOf(error)}\n`);
    return 70;
  }
}

/** A reader that closed the pipe early, such as `head`, is no error. */
export function endQuietlyOnClosedPipe(): void {
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code === 'EPIPE') process.exit(0);
    throw error;
  });
}

/** Lets what was written drain, then ends; a handle left open by a driver cannot keep the program alive. */
export function exit(code: number): void {
  process.exitCode = code;
  setTimeout(() => process.exit(code), 300).unref();
}

async function dispatch(argv: readonly string[], terminal: Terminal): Promise<number> {
  const inOrder = commandFirst(argv);
  const words = wantsDrill(inOrder, terminal) ? ['drill', ...inOrder] : inOrder;
  const found = findCommand(words);
  if (found === null) return withoutCommand(words, terminal);
  const command = await found.entry.load();
  const input = parseOptions(words.slice(found.words), command);
  if (input.values.help === true) {
    terminal.out(commandHelp(command));
    return 0;
  }
  if (input.values.version === true) {
    terminal.out(`${version()}\n`);
    return 0;
  }
  return command.run(input, contextOf(input, terminal));
}

/** Options of every command may stand before it as well: `ebbline --units imperial drill hairpin`. */
function commandFirst(argv: readonly string[]): readonly string[] {
  let at = 0;
  for (let word = argv[at]; word?.startsWith('--'); word = argv[at]) {
    const option = GLOBAL_OPTIONS[word.slice(2).split('=')[0] ?? ''];
    if (option === undefined) return argv;
    at += option.type === 'string' && !word.includes('=') ? 2 : 1;
  }
  const words = findCommand(argv.slice(at))?.words ?? wordsBeforeOptions(argv.slice(at));
  const name = at + words;
  return [...argv.slice(at, name), ...argv.slice(0, at), ...argv.slice(name)];
}

/** What stands where a command should, so that a slip of the keyboard is told as one. */
function wordsBeforeOptions(argv: readonly string[]): number {
  const option = argv.findIndex((word) => word.startsWith('-'));
  return option === -1 ? argv.length : option;
}

/** No command, on a terminal: the main job. */
function wantsDrill(argv: readonly string[], terminal: Terminal): boolean {
  const isNamed = argv[0] !== undefined && !argv[0].startsWith('-');
  const isAsked = argv.some((word) => ['--help', '-h', '--version'].includes(word));
  return !isNamed && !isAsked && terminal.interactive;
}

/** The longest command name that `words` starts with: `rig decode` before `rig`. */
function findCommand(
  words: readonly string[],
): { readonly entry: CatalogueEntry; readonly words: number } | null {
  for (const count of [2, 1]) {
    const name = words.slice(0, count).join(' ');
    const entry = CATALOGUE.find((candidate) => candidate.name === name);
    if (entry !== undefined && words.length >= count) return { entry, words: count };
  }
  return null;
}

function withoutCommand(words: readonly string[], terminal: Terminal): number {
  const first = words[0];
  if (first !== undefined && !first.startsWith('-')) return withoutSubcommand(words, terminal);
  const input = parseOptions(words, { name: '', options: {} });
  const { values } = input;
  // help is help, but an option alone that cannot be would be forgotten behind it
  if (values.help !== true && values.version !== true) contextOf(input, terminal);
  terminal.out(values.version === true ? `${version()}\n` : overview(COMMAND_GROUPS));
  return 0;
}

/** The name of a group alone, `ebbline car --help`, is explained; what else is no command is refused. */
function withoutSubcommand(words: readonly string[], terminal: Terminal): number {
  const group = commandsOf(words[0] ?? '');
  const options = words.slice(1);
  const isAsked =
    options[0]?.startsWith('-') === true && (options.includes('--help') || options.includes('-h'));
  if (group.length === 0 || !isAsked) return unknownCommand(words);
  terminal.out(groupHelp(words[0] ?? '', group));
  return 0;
}

function unknownCommand(words: readonly string[]): never {
  const first = words[0] ?? '';
  const group = commandsOf(first);
  if (group.length > 0) {
    throw new Problem(
      words[1] === undefined || words[1].startsWith('-')
        ? `${first} needs to know what to do`
        : `${first} has no ${words[1]}`,
      { next: `Say one of: ${group.map(({ name }) => name).join(', ')}.`, exitCode: 2 },
    );
  }
  const meant = commandsMeant(first).map((name) => `\`ebbline ${name}\``);
  throw new Problem(`there is no command ${JSON.stringify(first)}`, {
    next: `${meant.length === 0 ? '' : `Did you mean ${meant.join(' or ')}? `}See \`ebbline --help\`.`,
    exitCode: 2,
  });
}

/** What a word that is no command may stand for: the second word of some, such as `compare`, or a slip in one. */
function commandsMeant(word: string): readonly string[] {
  const names = CATALOGUE.map(({ name }) => name);
  const ending = names.filter((name) => name.split(' ')[1] === word);
  if (ending.length > 0) return ending;
  const near = nearest(word, [...new Set(names.flatMap((name) => [name, name.split(' ')[0]!]))]);
  return near === null ? [] : [near];
}

function contextOf(input: CommandInput, terminal: Terminal): CommandContext {
  const units = input.values.units ?? 'metric';
  if (units !== 'metric' && units !== 'imperial') {
    throw new Problem(`${JSON.stringify(units)} is not a set of units`, {
      where: '--units',
      next: 'Say metric or imperial.',
      exitCode: 2,
    });
  }
  const dataDir = givenDataDir(input.values['data-dir']);
  return {
    out: terminal.out,
    err: terminal.err,
    env: terminal.env,
    get interactive() {
      return terminal.interactive;
    },
    units,
    dataDir: dataDir ?? defaultDataDir(terminal.platform, terminal.env),
    color: input.values['no-color'] !== true && (terminal.env.NO_COLOR ?? '') === '',
  };
}

function stackOf(error: unknown): string {
  return error instanceof Error ? (error.stack ?? error.message) : String(error);
}
