import { Problem } from '../problem.ts';
import type { CommandInput } from './command.ts';

/** The one profile a command is about. @throws Problem (exit code 2) for none or several */
export function oneNamed({ positionals }: CommandInput, noun: string, command: string): string {
  const [wanted, ...others] = positionals;
  if (wanted !== undefined && others.length === 0) return wanted;
  throw new Problem(wanted === undefined ? `no ${noun} named` : `more than one ${noun} named`, {
    where: command,
    next: `Give the id of one ${noun} or the path of its file; \`ebbline ${noun} list\` lists ids.`,
    exitCode: 2,
  });
}
