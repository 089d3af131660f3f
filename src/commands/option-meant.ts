import { nearest } from '../profile/nearest.ts';

/**
 * The option that a mistyped one most likely stands for, as it is written; null where none is close or `message`, an
 * answer of Node's parseArgs, is about something else.
 */
export function optionMeant(message: string, known: readonly string[]): string | null {
  const typed = /Unknown option '--([^']*)'/.exec(message)?.[1];
  const near = typed === undefined ? null : nearest(typed, known);
  return near === null ? null : `--${near}`;
}
