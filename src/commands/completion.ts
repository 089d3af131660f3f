import { Problem } from '../problem.ts';
import { CATALOGUE } from './catalogue.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { completeWords, type NameSource, type Suggestion } from './completion/complete-words.ts';
import { SHELL_SCRIPTS, SHELLS, type Shell } from './completion/shell-scripts.ts';
import { profileEntries } from './profile-entries.ts';

/** Prints a shell's completion script, and answers that script. */
export const command: Command = {
  name: 'completion',
  summary: 'print a completion script for bash, zsh or fish',
  positionals: 'bash|zsh|fish',
  options: {},
  examples: [
    'source <(ebbline completion bash)     # in ~/.bashrc',
    'source <(ebbline completion zsh)      # in ~/.zshrc, after compinit',
    'ebbline completion fish | source      # in config.fish',
  ],
  run: complete,
};

async function complete({ positionals }: CommandInput, context: CommandContext): Promise<number> {
  const [first, ...rest] = positionals;
  if (first === 'reply') return reply(rest, context);
  if (rest.length > 0 || !isShell(first))
    throw new Problem(
      first === undefined ? 'no shell named' : `there is no script for ${positionals.join(' ')}`,
      { where: 'completion', next: `Say one of: ${SHELLS.join(', ')}.`, exitCode: 2 },
    );
  context.out(SHELL_SCRIPTS[first]);
  return 0;
}

const isShell = (word: string | undefined): word is Shell =>
  (SHELLS as readonly (string | undefined)[]).includes(word);

async function reply(words: readonly string[], context: CommandContext): Promise<number> {
  const names: NameSource = {
    profileIds: async (folder, dataDir) =>
      (await profileEntries(folder, dataDir ?? context.dataDir)).map(({ id }) => id),
    traceNames: async (dataDir) =>
      (await import('./trace-files.ts')).traceNames(dataDir ?? context.dataDir),
    topics: async () =>
      (await import('./help-topics.ts')).HELP_TOPICS.map(({ name, about }) => {
        return { word: name, help: about };
      }),
    answering: async () => (await import('./answers/answers.ts')).ANSWERING,
  };
  const suggestions = await completeWords(words, CATALOGUE, names);
  context.out(suggestions.filter(isOneLine).map(suggestionLine).join(''));
  return 0;
}

/** Own files may have any name; what would need quoting, or would write to the terminal, is left to be typed. */
const isOneLine = ({ word }: Suggestion): boolean =>
  /^:files$|^[\p{L}\p{N}][\p{L}\p{N}._:=-]*$|^--/u.test(word);

const suggestionLine = ({ word, help }: Suggestion): string =>
  help === '' ? `${word}\n` : `${word}\t${help}\n`;
