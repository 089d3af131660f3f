import { Problem } from '../../problem.ts';
import type { RepOutcome } from '../../score/rep-score.ts';
import type { NewNote, NewRep, PracticeStart } from '../store.ts';
import { zlib } from '../zlib.ts';

/** What one line of the journal says. Things refer to each other by `origin`, a random identity kept for ever. */
export type JournalEntry =
  | { readonly kind: 'practice'; readonly origin: string; readonly start: PracticeStart }
  | {
      readonly kind: 'rep';
      readonly origin: string;
      readonly practice: string;
      readonly rep: Omit<NewRep, 'record'>;
      /** The codec's bytes in base64. */
      readonly samples: string;
    }
  | { readonly kind: 'outcome'; readonly rep: string; readonly outcome: RepOutcome }
  | { readonly kind: 'rating'; readonly rep: string; readonly selfRating: string }
  | {
      readonly kind: 'note';
      readonly origin: string;
      /** Null for a note that is about no rep. */
      readonly rep: string | null;
      readonly note: Omit<NewNote, 'repId'>;
    };

const VERSION = 1;
const START = `{"ebbline":`;
const END = ',"end":true}';

/** A line with its line feed: a version, a CRC-32 of the entry's JSON, the entry, and an end that no torn line has. */
export function journalLine(entry: JournalEntry): string {
  const json = JSON.stringify(entry);
  return `${START}${VERSION},"crc":${zlib().crc32(json)},"entry":${json}${END}\n`;
}

/**
 * @param text A line without its line feed.
 * @returns null for an empty line and for one whose writing was cut short, which was never reported as kept.
 * @throws Problem for a line that is damaged or from a newer program.
 */
export function parseJournalLine(text: string, where: string): JournalEntry | null {
  if (isUnfinished(text)) return null;
  const line = parse(text);
  if (typeof line?.ebbline === 'number' && line.ebbline > VERSION)
    throw new Problem(`the journal has version ${line.ebbline}, this program reads ${VERSION}`, {
      where,
      next: 'It was left as it is. Use the newer version of ebbline that wrote it.',
    });
  if (line?.entry === undefined || zlib().crc32(JSON.stringify(line.entry)) !== line.crc)
    throw new Problem('the journal is damaged', {
      where,
      next: 'It was left as it is. Move it away and put a backup in its place.',
    });
  return line.entry.kind === 'rep' ? withLaterFields(line.entry) : line.entry;
}

/** A rep written before a field was added to it lacks the field. */
function withLaterFields(entry: Extract<JournalEntry, { readonly kind: 'rep' }>): JournalEntry {
  return { ...entry, rep: { ...LATER_FIELDS, ...entry.rep } };
}

const LATER_FIELDS: Pick<NewRep, 'live' | 'targetChange'> = { live: null, targetChange: null };

/** The beginning of a line, or the zeros some file systems leave where data did not reach the disk before a power cut. */
function isUnfinished(text: string): boolean {
  if (text.endsWith(END)) return false;
  return text.startsWith(START) || START.startsWith(text) || /^\0*$/.test(text);
}

interface Line {
  readonly ebbline?: number;
  readonly crc?: number;
  readonly entry?: JournalEntry;
}

function parse(text: string): Line | null {
  try {
    return JSON.parse(text) as Line;
  } catch {
    return null;
  }
}
