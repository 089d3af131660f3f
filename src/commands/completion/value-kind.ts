/** What may stand in one place of a command line. */
export type ValueKind =
  | { readonly kind: 'choices'; readonly choices: readonly string[] }
  /** Ids of profiles, by their folders below `profiles/` and the data folder. */
  | { readonly kind: 'profiles'; readonly folders: readonly string[] }
  /** Names of imported logs. */
  | { readonly kind: 'traces' }
  | { readonly kind: 'files' }
  /** A number or a text of the user's own. */
  | { readonly kind: 'free' };

const FREE: ValueKind = { kind: 'free' };
const FILES: ValueKind = { kind: 'files' };
const profiles = (...folders: string[]): ValueKind => ({ kind: 'profiles', folders });

const SOURCES: ValueKind = {
  kind: 'choices',
  choices: [
    'hid',
    'virtual',
    'virtual:skilled',
    'virtual:club',
    'virtual:novice',
    'pointer',
    'replay:',
  ],
};

/** Options whose placeholder in help is a letter. */
const BY_OPTION: Readonly<Record<string, ValueKind>> = {
  corner: profiles('corners'),
  car: profiles('cars'),
  target: profiles('targets'),
  plan: profiles('plans'),
  event: profiles('events'),
  source: SOURCES,
  trace: { kind: 'traces' },
};

const FOLDER_OF_GROUP: Readonly<Record<string, string>> = {
  car: 'cars',
  corner: 'corners',
  target: 'targets',
  plan: 'plans',
  event: 'events',
};

/** Choices are written into help as `metric|imperial`. */
const CHOICES = /^[a-z][a-z0-9-]*(\|[a-z][a-z0-9-]*)+$/;
const FILE_PLACE = /^(FILE|DIR|ROOT)/;

/** What an option takes, read off its name and its placeholder in help. */
export function kindOfOption(name: string, placeholder: string | undefined): ValueKind {
  const value = placeholder ?? '';
  if (CHOICES.test(value)) return { kind: 'choices', choices: value.split('|') };
  if (FILE_PLACE.test(value)) return FILES;
  return BY_OPTION[name] ?? FREE;
}

/** What stands alone on a command's line, read off its usage: `CORNER...`, `[TARGET]`, `NAME|FILE.yaml`. */
export function kindOfPositional(commandName: string, positionals: string): ValueKind {
  const place = positionals.replace(/[[\].]/g, '').split(/[ |]/)[0] ?? '';
  if (CHOICES.test(positionals)) return { kind: 'choices', choices: positionals.split('|') };
  if (FILE_PLACE.test(place)) return FILES;
  // A drill takes a target or a corner, and so does what is said of one later.
  if (['drill', 'progress'].includes(commandName)) return profiles('targets', 'corners');
  if (commandName === 'brief') return profiles('events', 'corners');
  const group = commandName.split(' ')[0] ?? '';
  if (place === 'NAME' && group === 'trace') return { kind: 'traces' };
  const folder = FOLDER_OF_GROUP[place === 'NAME' ? group : place.toLowerCase()];
  return folder === undefined ? FREE : profiles(folder);
}
