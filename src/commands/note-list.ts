import { localDate } from '../consistency/local-date.ts';
import { openExistingHistory } from '../history/open-history.ts';
import type { HistoryStore, StoredNote } from '../history/store.ts';
import { cleanText } from '../input/discovery/clean-text.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { CORNER_FILES } from './corner-files.ts';
import { driverOption } from './driver-option.ts';
import { misuseOf } from './misuse-of.ts';
import { profileEntry } from './profile-files.ts';
import { refuseUnknownDriver } from './refuse-unknown-driver.ts';
import { textColumns } from './text-columns.ts';
import { LONGEST_TEXT, wordedNotes } from './worded-notes.ts';

const misuse = misuseOf('note list');

/** Lists notes, and marks that wait for words. */
export const command: Command = {
  name: 'note list',
  summary: 'list notes and marks',
  positionals: '[CORNER]',
  options: {
    driver: { type: 'string', value: 'NAME', help: 'only this driver' },
    json: { type: 'boolean', help: 'one JSON object instead of a table' },
  },
  examples: ['ebbline note list', 'ebbline note list kiln-hairpin --json'],
  run: noteList,
};

/** A note with the number of its rep in its practice. */
interface ListedNote extends StoredNote {
  readonly repNumber: number | null;
}

async function noteList(
  { positionals, values }: CommandInput,
  context: CommandContext,
): Promise<number> {
  const [corner, ...more] = positionals;
  if (more.length > 0)
    throw misuse(`it takes one corner, not ${positionals.length}`, 'Leave out the others.');
  const driver = driverOption(values.driver, 'note list --driver');
  const history = openExistingHistory(context.dataDir);
  try {
    if (history !== null && history.notice !== null) context.err(`ebbline: ${history.notice}\n`);
    refuseUnknownDriver(driver, history, 'note list --driver');
    const query = {
      ...(corner === undefined ? {} : { corner }),
      ...(driver === null ? {} : { driver }),
    };
    const notes = history === null ? [] : listed(history, wordedNotes(history.notes(query)));
    // A sheet may be gone and its notes not.
    if (notes.length === 0 && corner !== undefined)
      await profileEntry(CORNER_FILES, corner, context.dataDir);
    context.out(values.json === true ? `${JSON.stringify(json(notes))}\n` : table(notes, corner));
  } finally {
    history?.close();
  }
  return 0;
}

function listed(history: HistoryStore, notes: readonly StoredNote[]): ListedNote[] {
  const wanted = new Set(notes.map(({ repId }) => repId));
  const numbers = new Map<number, number>();
  if (wanted.size > 1 || !wanted.has(null))
    for (const { id, number } of history.reps({})) if (wanted.has(id)) numbers.set(id, number);
  return notes.map((note) => ({
    ...note,
    repNumber: note.repId === null ? null : (numbers.get(note.repId) ?? null),
  }));
}

function table(notes: readonly ListedNote[], corner: string | undefined): string {
  if (notes.length === 0)
    return `No notes${corner === undefined ? '' : ` on ${corner}`} yet: press n in a drill, or see \`ebbline note add --help\`.\n`;
  const cell = (value: string | number | null): string =>
    value === null ? '-' : cleanText(String(value));
  return textColumns([
    ['day', 'driver', 'corner', 'variant', 'gear', 'rep', 'note'],
    ...notes.map(({ at, driver, corner: place, variant, gear, repNumber, text }) => [
      localDate(at),
      cell(driver),
      cell(place),
      cell(variant),
      cell(gear),
      cell(repNumber),
      text === '' ? '(mark)' : cleanText(text, LONGEST_TEXT),
    ]),
  ]);
}

function json(notes: readonly ListedNote[]): object {
  return {
    notes: notes.map(({ id, at, driver, text, car, corner, variant, gear, repId, repNumber }) => ({
      id,
      at: new Date(at.utcMs).toISOString(),
      local_date: localDate(at),
      driver,
      text,
      car,
      corner,
      variant,
      gear,
      rep_id: repId,
      rep_number: repNumber,
    })),
  };
}
