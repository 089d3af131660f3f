import { Problem } from '../problem.ts';
import type { OptionValue } from './command.ts';

const LONGEST = 60;

/**
 * The driver that `--driver` names; null where it was not given.
 * @throws Problem (exit code 2) for what is no name
 */
export function driverOption(value: OptionValue, where: string): string | null {
  if (typeof value !== 'string') return null;
  const name = value.trim();
  const wrong =
    name === ''
      ? 'is empty'
      : [...name].length > LONGEST
        ? `is longer than ${LONGEST} characters`
        : /[\p{Cc}\p{Cs}\p{Zl}\p{Zp}]/u.test(name)
          ? 'has characters that cannot be printed'
          : null;
  if (wrong === null) return name;
  throw new Problem(`the name after --driver ${wrong}`, {
    where,
    next: 'Say a name such as --driver Kim.',
    exitCode: 2,
  });
}
