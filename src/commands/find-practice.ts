import { localDate } from '../consistency/local-date.ts';
import type { HistoryStore, StoredPractice } from '../history/store.ts';
import { Problem } from '../problem.ts';
import { commandWord } from './command-word.ts';

const MOST_LISTED = 5;
const A_DAY = /^\d{4}-\d{2}-\d{2}$/;

/**
 * The practice that the user names: its number, `last`, or its day where there was one that day.
 *
 * @param driver only theirs; null for all
 * @throws Problem that lists the newest practices, with exit code 2 for what is no name of one
 */
export function findPractice(
  history: HistoryStore,
  name: string | undefined,
  driver: string | null,
): StoredPractice {
  const all = driver === null ? history.practices() : history.practices(driver);
  const newest = all.toSorted((a, b) => a.startedAt.utcMs - b.startedAt.utcMs || a.id - b.id);
  const last = newest.at(-1);
  if (last === undefined)
    throw new Problem(
      driver === null
        ? 'there is no practice yet'
        : `${JSON.stringify(driver)} has no practice yet`,
      {
        next: 'Drive some reps with `ebbline drill`, or try `ebbline virtual history --help`.',
      },
    );
  if (name === undefined) throw misuse('no practice named', newest);
  if (name === 'last') return last;
  if (A_DAY.test(name)) return ofDay(name, newest);
  if (!/^\d+$/.test(name)) throw misuse(`${JSON.stringify(name)} names no practice`, newest, name);
  const found = all.find(({ id }) => id === Number(name));
  if (found !== undefined) return found;
  throw new Problem(`there is no practice ${name}`, { where: 'report', next: listed(newest) });
}

function ofDay(day: string, all: readonly StoredPractice[]): StoredPractice {
  const found = all.filter(({ startedAt }) => localDate(startedAt) === day);
  const [first, second] = found;
  if (first === undefined)
    throw new Problem(`there was no practice on ${day}`, { where: 'report', next: listed(all) });
  if (second === undefined) return first;
  throw new Problem(`there were ${found.length} practices on ${day}`, {
    where: 'report',
    next: `Say which: ${found.map(({ id }) => id).join(', ')}.`,
  });
}

function misuse(what: string, all: readonly StoredPractice[], named = 'hairpin'): Problem {
  return new Problem(what, {
    where: 'report',
    next: `Say a number, a day like 2026-11-25, or last. ${listed(all)} A target or a corner goes with weeks: --weeks 10 ${commandWord(named)}.`,
    exitCode: 2,
  });
}

function listed(all: readonly StoredPractice[]): string {
  const newest = all.slice(-MOST_LISTED).toReversed();
  const items = newest.map(({ id, startedAt }) => `${id} on ${localDate(startedAt)}`);
  return `The newest: ${items.join(', ')}.`;
}
