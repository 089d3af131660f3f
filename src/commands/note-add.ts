import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import { openHistory } from '../history/open-history.ts';
import type { HistoryStore, NewNote, StoredRep } from '../history/store.ts';
import { cleanText } from '../input/discovery/clean-text.ts';
import { Problem } from '../problem.ts';
import type { Command, CommandContext, CommandInput, OptionValue } from './command.ts';
import { commandWord } from './command-word.ts';
import { CORNER_FILES, findCorner } from './corner-files.ts';
import { driverOption } from './driver-option.ts';
import { LOCAL_DRIVER } from './local-driver.ts';
import { meantCorner } from './meant-corner.ts';
import { misuseOf } from './misuse-of.ts';
import { textOption, wholeIfGiven } from './option-value.ts';
import { isPath, profileIds } from './profile-files.ts';
import { LONGEST_TEXT } from './worded-notes.ts';
import { zonedNow } from './zoned-now.ts';

const misuse = misuseOf('note add');

const MOST_GEARS = 20;

/** Keeps a note for good. */
export const command: Command = {
  name: 'note add',
  summary: 'write a note about a corner or a rep',
  positionals: '[CORNER] TEXT',
  options: {
    corner: {
      type: 'string',
      value: 'CORNER',
      help: 'the corner it is about, like the first word',
    },
    variant: { type: 'string', value: 'NAME', help: 'variant of the corner' },
    gear: { type: 'string', value: 'N', help: 'gear' },
    rep: { type: 'string', value: 'N', help: 'number of the rep in the last practice' },
    driver: { type: 'string', value: 'NAME', help: 'whose note it is' },
    json: { type: 'boolean', help: 'one JSON object instead of a line' },
  },
  examples: [
    'ebbline note add kiln-hairpin "ease over the bump at 40 m" --gear 2',
    'ebbline note add "rear got light here" --rep 6',
  ],
  run: (input, context) => noteAdd(input, context, zonedNow()),
};

/** `note add` with the time passed in. */
export async function noteAdd(
  input: CommandInput,
  context: CommandContext,
  at: ZonedInstant,
): Promise<number> {
  const { positionals, values } = await withCornerNamed(input, context);
  const text = textOf(positionals);
  const said = { ...(await placeOf(values, context)), gear: gearOf(values.gear) };
  const number = wholeIfGiven('--rep', values.rep, 1, 1_000_000);
  const history = openHistory(context.dataDir);
  try {
    if (history.notice !== null) context.err(`ebbline: ${history.notice}\n`);
    const driver = driverOption(values.driver, 'note add --driver');
    const rep = number === null ? null : repOf(history, number, driver);
    const note = noteOf({ text, at, driver, said, rep, history });
    const id = history.addNote(note);
    context.out(values.json === true ? `${JSON.stringify({ id })}\n` : keptText(id, note));
    if (note.corner === null) await tellMeant(text, context);
  } finally {
    history.close();
  }
  return 0;
}

/** The id of a corner before the text says what the note is about, as it does for every other command. */
async function withCornerNamed(
  { positionals, values }: CommandInput,
  { dataDir }: CommandContext,
): Promise<CommandInput> {
  const [corner, ...text] = positionals;
  if (corner === undefined || values.corner !== undefined) return { positionals, values };
  const isCorner = (await profileIds(CORNER_FILES, dataDir)).includes(corner);
  return isCorner ? { positionals: text, values: { ...values, corner } } : { positionals, values };
}

/** A text may begin with any word: the note is kept, and what may have been meant is said. */
async function tellMeant(text: string, { err, dataDir }: CommandContext): Promise<void> {
  const meant = meantCorner(text, await profileIds(CORNER_FILES, dataDir));
  if (meant === null) return;
  const { corner, said, rest } = meant;
  err(
    `ebbline: the note names no corner: ${JSON.stringify(cleanText(said))} is a part of its text\n` +
      `  If ${corner} was meant, say it again: ebbline note add ${corner} ${rest === '' ? '"TEXT"' : commandWord(cleanText(rest, LONGEST_TEXT))}\n`,
  );
}

function keptText(id: number, { corner }: NewNote): string {
  return `Note ${id}${corner === null ? '' : ` on ${cleanText(corner)}`} is kept.\n`;
}

interface Said {
  readonly text: string;
  readonly at: ZonedInstant;
  readonly driver: string | null;
  readonly said: Pick<NewNote, 'corner' | 'variant' | 'gear'>;
  readonly rep: StoredRep | null;
  readonly history: HistoryStore;
}

/** What was said goes before what the rep and the mark on it know. */
function noteOf({ text, at, driver, said, rep, history }: Said): NewNote {
  const marked = rep === null ? undefined : history.notes({ repId: rep.id })[0];
  return {
    at,
    driver: driver ?? rep?.practice.driver ?? LOCAL_DRIVER,
    text,
    car: rep?.car ?? null,
    corner: said.corner ?? rep?.corner ?? null,
    variant: said.variant ?? rep?.variant ?? null,
    gear: said.gear ?? marked?.gear ?? null,
    repId: rep?.id ?? null,
  };
}

/** The rep of that number in the last practice. */
function repOf(history: HistoryStore, number: number, driver: string | null): StoredRep {
  const [last] = history.reps({ limit: 1, ...(driver === null ? {} : { driver }) });
  const reps = last === undefined ? [] : [...history.reps({ practiceId: last.practice.id })];
  const found = reps.find((rep) => rep.number === number);
  if (found !== undefined) return found;
  const newest = reps.at(-1)?.number;
  throw new Problem(`the last practice has no rep ${number}`, {
    where: 'note add --rep',
    next:
      newest === undefined
        ? 'There are no reps yet: leave out --rep, or drive some with `ebbline drill`.'
        : `Its reps go up to ${newest}; \`ebbline note list\` shows the marked ones.`,
  });
}

async function placeOf(
  { corner, variant }: CommandInput['values'],
  { dataDir }: CommandContext,
): Promise<Pick<NewNote, 'corner' | 'variant'>> {
  const named = textOption(variant);
  if (typeof corner !== 'string') return { corner: null, variant: named };
  if (isPath(corner)) throw misuse('--corner takes the id of a corner, not a path', IDS);
  const sheet = await findCorner(corner, dataDir);
  const names = sheet.variants.map(({ name }) => name);
  if (named !== null && !names.includes(named))
    throw misuse(
      `${sheet.id} has no variant ${JSON.stringify(named)}`,
      `It has: ${names.join(', ')}.`,
    );
  return { corner: sheet.id, variant: named };
}

const IDS = 'See the ids with `ebbline corner list`.';

function textOf(positionals: readonly string[]): string {
  const text = positionals.join(' ').trim();
  if (text === '') throw misuse('the note has no text', 'Put the text in quotation marks.');
  if ([...text].length <= LONGEST_TEXT) return text;
  throw misuse(`the note is longer than ${LONGEST_TEXT} characters`, 'Make two of it.');
}

function gearOf(value: OptionValue): number | null {
  return wholeIfGiven('--gear', value, 1, MOST_GEARS);
}
