import { cleanText } from '../input/discovery/clean-text.ts';
import { commandWord } from './command-word.ts';

/** What to do with something that was shown, as the last line of its page. @param words of the command behind its name */
export function drillIt(...words: readonly string[]): string {
  const said = words.map((word) => commandWord(cleanText(word, 1024)));
  return `\nDrill it: ebbline drill ${said.join(' ')}\n`;
}
