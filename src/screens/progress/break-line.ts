import { CONDITION_WORDS } from '../../consistency/condition-words.ts';
import type { Conditions } from '../../consistency/rep-measure.ts';
import { cleanText } from '../../input/discovery/clean-text.ts';

const COLUMNS = 80;

/** What is kept as a hash says nothing to a driver. */
const WHOLE_WORDS: Readonly<Partial<Record<keyof Conditions, string>>> = {
  calibrationId: 'other pedals or calibration',
  targetVersion: 'the target was changed',
};

/**
 * Stands between two rows that do not compare, and says why; as wide as the screen.
 * @param from first day of the new conditions; null where the next row says it
 */
export function breakLine(
  changed: readonly (keyof Conditions)[],
  before: Conditions,
  after: Conditions,
  from: string | null,
): string {
  const changes = changed.map((name) => WHOLE_WORDS[name] ?? changeText(name, before, after));
  const since = from === null ? '' : ` from ${from} on`;
  const text = `-- does not compare${since}: ${changes.join(', ')} `;
  const letters = Array.from(text);
  return letters.length > COLUMNS
    ? `${letters.slice(0, COLUMNS - 3).join('')}...`
    : text.padEnd(COLUMNS, '-');
}

function changeText(name: keyof Conditions, before: Conditions, after: Conditions): string {
  const [was, is] = [before, after].map((conditions) => cleanText(String(conditions[name]), 12));
  return `${CONDITION_WORDS[name]} ${was} -> ${is}`;
}
