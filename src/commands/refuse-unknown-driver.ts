import type { HistoryStore } from '../history/store.ts';
import { cleanText } from '../input/discovery/clean-text.ts';
import { Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import { namesText } from './names-text.ts';

/**
 * A driver of whom a history that is there keeps nothing is most likely a slip of the keyboard. A history without any
 * driver refuses nobody: what the command says of an empty history is right then.
 *
 * @throws Problem that lists whose reps and notes there are
 */
export function refuseUnknownDriver(
  driver: string | null,
  history: HistoryStore | null,
  where: string,
): void {
  if (driver === null || history === null) return;
  const kept = [...history.practices(), ...history.notes({})];
  const names = [...new Set(kept.map((one) => one.driver))];
  if (names.length === 0 || names.includes(driver)) return;
  const near = nearest(driver, names);
  const guess = near === null ? '' : `Did you mean ${cleanText(near)}? `;
  throw new Problem(`there is nothing of driver ${JSON.stringify(driver)}`, {
    where,
    next: `${guess}There are reps or notes of: ${namesText(names)}.`,
  });
}
