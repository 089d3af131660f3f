import { Problem } from '../problem.ts';
import type { Command, CommandInput, OptionValue } from './command.ts';

/** @throws Problem (exit code 2) where two options were given of which one would be passed over */
export function refuseApart(
  values: CommandInput['values'],
  { apart = [] }: Pick<Command, 'apart'>,
): void {
  for (const { one, others, because } of apart) {
    const other = others.find((name) => isGiven(values[name]));
    if (!isGiven(values[one]) || other === undefined) continue;
    throw new Problem('they do not go together', {
      where: `--${one} and --${other}`,
      next: `${because} Leave one of them out.`,
      exitCode: 2,
    });
  }
}

const isGiven = (value: OptionValue): boolean => value !== undefined && value !== false;
