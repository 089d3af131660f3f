import { Problem } from '../problem.ts';
import type { OptionValue } from './command.ts';

/** Wrong usage: what was said, at `where`, cannot be. */
export function notPossible(where: string, found: string, next: string): Problem {
  return new Problem(`${found} is not possible here`, { where, next, exitCode: 2 });
}

/** The whole number that an option says. @throws Problem (exit code 2) for anything else, with what is allowed */
export function wholeOption(
  option: string,
  value: OptionValue,
  least: number,
  most: number,
): number {
  const number = Number(value);
  if (/^\d+$/.test(String(value)) && number >= least && number <= most) return number;
  throw notPossible(option, JSON.stringify(value), `Say a whole number from ${least} to ${most}.`);
}

/** The same; null where the option is not given. */
export function wholeIfGiven(
  option: string,
  value: OptionValue,
  least: number,
  most: number,
): number | null {
  return value === undefined ? null : wholeOption(option, value, least, most);
}

/** The number that an option says; null where it is not given. @throws Problem (exit code 2) for anything else */
export function numberOption(
  option: string,
  value: OptionValue,
  least: number,
  most: number,
  next: string = `Say a number from ${least} to ${most}.`,
): number | null {
  const text = textOption(value);
  if (text === null) return null;
  const number = text.trim() === '' ? Number.NaN : Number(text);
  if (number >= least && number <= most) return number;
  throw notPossible(option, JSON.stringify(text), next);
}

/** Weeks to look back on. @throws Problem (exit code 2) for what is no number of weeks */
export function weeksOption(value: OptionValue): number {
  return wholeOption('--weeks', value, 1, 5200);
}

/** The text that an option gives; null where it is not given. */
export function textOption(value: OptionValue): string | null {
  return typeof value === 'string' ? value : null;
}
