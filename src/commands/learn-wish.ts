import { FEWEST_REPS } from '../target/learn/learn-target.ts';
import type { LearnedWords } from '../target/learn/learned-file.ts';
import type { CommandContext, CommandInput, OptionValue } from './command.ts';
import { driverOption } from './driver-option.ts';
import { chosenReps } from './learn-reps.ts';
import { type Chosen, chosenZones } from './learn-zones.ts';
import { misuseOf } from './misuse-of.ts';
import { textOption } from './option-value.ts';

const misuse = misuseOf('target learn');

/** How many of the best reps, where nobody says. */
export const USUAL_BEST = 10;
const MOST_BEST = 200;
const LONGEST_NAME = 40;
const LONGEST_TYPE = 30;

/** What the options ask to learn from, found. @throws Problem for options that do not go together, or find nothing */
export async function chosenToLearn(input: CommandInput, context: CommandContext): Promise<Chosen> {
  const { positionals, values } = input;
  if (positionals.length > 0) throw misuse(`${positionals[0]} belongs to no option`);
  const [trace, reps] = [textOption(values.trace), textOption(values.reps)];
  if (trace !== null && reps === null) {
    refuseOthers(values, ['best', 'driver'], '--reps');
    return chosenZones(trace, input, context);
  }
  if (trace === null && reps !== null) {
    refuseOthers(values, ['zone', 'full-scale'], '--trace');
    return chosenReps(
      {
        name: reps,
        driver: driverOption(values.driver, 'target learn --driver'),
        best: bestOf(values.best),
      },
      context,
    );
  }
  if (trace !== null) throw misuse('--trace and --reps together');
  throw misuse(
    'nothing to learn from',
    'Say --trace NAME --zone N,N,N for a log, or --reps ID for your own reps.',
  );
}

function refuseOthers(values: CommandInput['values'], names: readonly string[], of: string): void {
  const given = names.find((name) => values[name] !== undefined);
  if (given !== undefined) throw misuse(`--${given} belongs to ${of}`);
}

function bestOf(value: OptionValue): number {
  if (value === undefined) return USUAL_BEST;
  const best = /^\d+$/.test(String(value)) ? Number(value) : 0;
  if (best >= FEWEST_REPS && best <= MOST_BEST) return best;
  throw misuse(
    `--best is ${JSON.stringify(value)}`,
    `Say a whole number from ${FEWEST_REPS} to ${MOST_BEST}.`,
  );
}

/** Name and corner type as the options give them, else as what is learned from has them. */
export function learnedWords({ values }: CommandInput, usual: Chosen['words']): LearnedWords {
  return {
    ...usual,
    name: words(values, 'name', usual.name, LONGEST_NAME),
    cornerType: words(values, 'corner-type', usual.cornerType, LONGEST_TYPE),
  };
}

/** A name that was given is taken or refused; one made up is cut. */
function words(
  values: CommandInput['values'],
  option: string,
  usual: string,
  most: number,
): string {
  const given = textOption(values[option]);
  if (given === null) return [...usual].slice(0, most).join('').trim();
  if (given.trim() !== '' && given.length <= most && !/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/u.test(given))
    return given;
  throw misuse(`--${option} is ${JSON.stringify(given)}`, `Give 1 to ${most} plain characters.`);
}
