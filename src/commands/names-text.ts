import { cleanText } from '../input/discovery/clean-text.ts';

/** Names from outside, in quotes because they may have commas, safe for a terminal. */
export function namesText(names: readonly string[]): string {
  return names.map((name) => `"${cleanText(name)}"`).join(', ');
}
