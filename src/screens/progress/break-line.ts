import { CONDITION_WORDS } from '../../consistency/condition-words.ts';
import type { Conditions } from '../../consistency/rep-measure.ts';
import { cleanText } from '../../input/discovery/clean-text.ts';

const COLUMNS = 80;

/** Stands between two rows that do not compare, and says why; as wide as the screen. */
export function breakLine(
  changed: readonly (keyof Conditions)[],
  before: Conditions,
  after: Conditions,
): string {
  const changes = changed.map((name) => {
    const [was, is] = [before, after].map((conditions) => cleanText(String(conditions[name]), 12));
    return `${CONDITION_WORDS[name]} ${was} -> ${is}`;
  });
  const text = `-- does not compare: ${changes.join(', ')} `;
  const letters = Array.from(text);
  return letters.length > COLUMNS
    ? `${letters.slice(0, COLUMNS - 3).join('')}...`
    : text.padEnd(COLUMNS, '-');
}
