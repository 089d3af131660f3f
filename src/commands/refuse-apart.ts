import type { Command, CommandInput, OptionValue } from './command.ts';
import { notPossible } from './option-value.ts';

/** @throws Problem (exit code 2) where two options were given of which one would be passed over */
export function refuseApart(
  values: CommandInput['values'],
  { apart = [] }: Pick<Command, 'apart'>,
): void {
  for (const { one, others, because } of apart) {
    const other = others.find((name) => isGiven(values[name]));
    if (!isGiven(values[one]) || other === undefined) continue;
    throw notPossible(
      `--${one}`,
      `--${one} beside --${other}`,
      `${because} Leave one of them out.`,
    );
  }
}

const isGiven = (value: OptionValue): boolean => value !== undefined && value !== false;
