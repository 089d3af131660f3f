import type { CatalogueEntry } from '../catalogue.ts';
import type { Command, OptionSpec } from '../command.ts';
import { GLOBAL_OPTIONS } from '../options.ts';
import { kindOfOption, kindOfPositional, type ValueKind } from './value-kind.ts';

/** One word that may stand next, and what help says of it. */
export interface Suggestion {
  readonly word: string;
  readonly help: string;
}

/** What completion has to look up, on disk or in what is only loaded for it. */
export interface NameSource {
  profileIds(folder: string, dataDir: string | null): Promise<readonly string[]>;
  traceNames(dataDir: string | null): Promise<readonly string[]>;
  /** Topics of help. */
  topics(): Promise<readonly Suggestion[]>;
  /** Commands whose answer has a schema. */
  answering(): Promise<readonly string[]>;
}

/** Stands for "a file of yours", where no name fits: the shell knows those better. */
const FILES_WANTED: Suggestion = { word: ':files', help: '' };

type Catalogue = readonly Pick<CatalogueEntry, 'name' | 'summary' | 'load'>[];

/**
 * What may follow on a command line.
 *
 * @param words everything after the program's name; the last one is being typed and may be empty
 */
export async function completeWords(
  words: readonly string[],
  catalogue: Catalogue,
  names: NameSource,
): Promise<readonly Suggestion[]> {
  const typed = words.at(-1) ?? '';
  const before = words.slice(0, -1);
  const entry = commandOf(before, catalogue);
  if (entry === null) return commandWords(before, typed, catalogue);
  if (entry.name === 'help' && !typed.startsWith('-'))
    return helpWords(before.slice(1), typed, { catalogue, names });
  const command = await entry.load();
  const options = { ...command.options, ...GLOBAL_OPTIONS };
  const suggestions = await suggest({ command, options, before, typed }, names);
  const fitting = suggestions.filter((s) => s !== FILES_WANTED && s.word.startsWith(typed));
  if (fitting.length > 0 || !suggestions.includes(FILES_WANTED)) return fitting;
  return [FILES_WANTED];
}

interface Place {
  readonly command: Command;
  readonly options: Readonly<Record<string, OptionSpec>>;
  readonly before: readonly string[];
  readonly typed: string;
}

async function suggest(
  { command, options, before, typed }: Place,
  names: NameSource,
): Promise<readonly Suggestion[]> {
  const dataDir = dataDirOf(before);
  const assigned = /^--([a-z0-9-]+)=/.exec(typed);
  if (assigned?.[1] !== undefined) {
    const values = await valuesOf(optionKind(assigned[1], options), dataDir, names);
    return values.map(({ word, help }) => ({ word: `--${assigned[1]}=${word}`, help }));
  }
  const last = before.at(-1) ?? '';
  if (takesValue(last, options))
    return valuesOf(optionKind(last.slice(2), options), dataDir, names);
  if (typed.startsWith('-')) return optionWords(options, before);
  return valuesOf(kindOfPositional(command.name, command.positionals), dataDir, names);
}

const optionKind = (name: string, options: Place['options']): ValueKind =>
  kindOfOption(name, options[name]?.value);

const takesValue = (word: string, options: Place['options']): boolean =>
  word.startsWith('--') && options[word.slice(2)]?.type === 'string';

/** Options not said yet, or that may be said again. */
function optionWords(options: Place['options'], before: readonly string[]): readonly Suggestion[] {
  return Object.entries(options)
    .filter(([name, { multiple }]) => multiple === true || !before.includes(`--${name}`))
    .map(([name, { help }]) => ({ word: `--${name}`, help }));
}

async function valuesOf(
  kind: ValueKind,
  dataDir: string | null,
  names: NameSource,
): Promise<readonly Suggestion[]> {
  const plain = (words: readonly string[]): readonly Suggestion[] =>
    words.map((word) => ({ word, help: '' }));
  switch (kind.kind) {
    case 'free':
      return [];
    case 'files':
      return [FILES_WANTED];
    case 'choices':
      return plain(kind.choices);
    case 'traces':
      return plain(await names.traceNames(dataDir));
    case 'profiles': {
      const ids = await Promise.all(
        kind.folders.map((folder) => names.profileIds(folder, dataDir)),
      );
      return [...plain([...new Set(ids.flat())]), FILES_WANTED];
    }
  }
}

/** `--data-dir` before the word decides whose names are meant. */
function dataDirOf(before: readonly string[]): string | null {
  const at = before.lastIndexOf('--data-dir');
  return at < 0 ? null : (before[at + 1] ?? null);
}

/** The longest command that the first words name. */
function commandOf(before: readonly string[], catalogue: Catalogue): Catalogue[number] | null {
  for (const count of [2, 1]) {
    const name = before.slice(0, count).join(' ');
    const found = catalogue.find((entry) => entry.name === name);
    if (found !== undefined && before.length >= count) return found;
  }
  return null;
}

/** First or second word of a command; a group of commands is one word. */
function commandWords(
  before: readonly string[],
  typed: string,
  catalogue: Catalogue,
): readonly Suggestion[] {
  if (typed.startsWith('-'))
    return optionWords(GLOBAL_OPTIONS, before).filter(({ word }) => word.startsWith(typed));
  if (before.length > 1) return [];
  const [group] = before;
  const words = new Map<string, string>();
  for (const { name, summary } of catalogue) {
    const [first = '', second] = name.split(' ');
    if (group === undefined) words.set(first, second === undefined ? summary : `${first} commands`);
    else if (group === first && second !== undefined) words.set(second, summary);
  }
  return [...words]
    .map(([word, help]) => ({ word, help }))
    .filter(({ word }) => word.startsWith(typed));
}

/** A topic or a command; after `json` a command whose answer has a schema. */
async function helpWords(
  before: readonly string[],
  typed: string,
  { catalogue, names }: { readonly catalogue: Catalogue; readonly names: NameSource },
): Promise<readonly Suggestion[]> {
  const [first] = before;
  if (first === 'json') {
    const answering = await names.answering();
    const known = catalogue.filter(({ name }) => answering.includes(name));
    return commandWords(before.slice(1), typed, known);
  }
  const commands = commandWords(before, typed, catalogue);
  if (first !== undefined) return commands;
  const topics = (await names.topics()).filter(({ word }) => word.startsWith(typed));
  const isTopic = (word: string): boolean => topics.some((topic) => topic.word === word);
  return [...topics, ...commands.filter(({ word }) => !isTopic(word))];
}
