import { buildCar } from '../car/build-car.ts';
import type { CarFile } from '../car/car-file.ts';
import { buildCorner, variantOfSheet } from '../corner/build-corner.ts';
import type { Corner } from '../corner/corner.ts';
import type { CornerSheet } from '../corner/corner-sheet.ts';
import { Problem } from '../problem.ts';
import { type DerivedTarget, deriveTarget } from '../target/derive/derive-target.ts';
import {
  DEFAULT_EXIT_M,
  type TimeDifference,
  timeDifference,
} from '../target/derive/time-difference.ts';
import type { ModelName } from '../target/derive/zone-model.ts';
import type { CommandInput, OptionSpec } from './command.ts';
import { numberOption, textOption, wholeIfGiven } from './option-value.ts';

/** Options that ask for the time another variant or gear plan would take. */
export const AGAINST_OPTIONS: Readonly<Record<string, OptionSpec>> = {
  'against-variant': {
    type: 'string',
    value: 'NAME',
    help: 'time over corner and exit against another variant',
  },
  'against-gear': {
    type: 'string',
    value: 'N',
    help: 'the same against gear N at the slowest point',
  },
  'exit-m': {
    type: 'string',
    value: 'M',
    help: `straight after the corner that counts (default ${DEFAULT_EXIT_M})`,
  },
};

/** The other way of driving the corner; null takes what the first one has. */
interface Against {
  readonly variant: string | null;
  readonly slowestGear: number | null;
  readonly exitM: number;
}

export interface Compared {
  readonly other: DerivedTarget;
  readonly difference: TimeDifference;
}

const LONGEST_EXIT_M = 3000;

/** @returns null where nothing is to be compared; @throws Problem (exit code 2) for a number that cannot be */
export function readAgainst(values: CommandInput['values'], model: ModelName): Against | null {
  const variant = values['against-variant'];
  const slowestGear = wholeIfGiven('--against-gear', values['against-gear'], 1, 12);
  const exitM = numberOption('--exit-m', values['exit-m'], 0, LONGEST_EXIT_M);
  if (typeof variant !== 'string' && slowestGear === null) {
    if (exitM === null) return null;
    throw misuse(
      '--exit-m',
      'there is nothing to compare',
      'Add --against-variant or --against-gear.',
    );
  }
  if (model !== 'two-axle')
    throw misuse('--model', 'a point mass has no gears', 'Leave --model away to compare times.');
  return {
    variant: textOption(variant),
    slowestGear,
    exitM: exitM ?? DEFAULT_EXIT_M,
  };
}

/** The other way solved, and what it takes against the first one. @throws Problem for a variant or gear there is not */
export function compare(
  derived: DerivedTarget,
  {
    carFile,
    sheet,
    against,
  }: { readonly carFile: CarFile; readonly sheet: CornerSheet; readonly against: Against },
): Compared {
  const variant = against.variant ?? derived.corner.variant;
  const car = buildCar(carFile, variantOfSheet(sheet, variant).car);
  const other = deriveTarget(car, inGear(buildCorner(sheet, variant), against.slowestGear));
  return { other, difference: timeDifference(derived, other, against.exitM) };
}

/** The corner with another gear at the slowest point, each downshift at its earliest safe place. */
function inGear(corner: Corner, slowest: number | null): Corner {
  if (slowest === null) return corner;
  const { approach } = corner.gears;
  if (slowest <= approach) return { ...corner, gears: { approach, slowest, shiftsAtM: null } };
  throw misuse('--against-gear', `the approach is in gear ${approach}`, `Say 1 to ${approach}.`);
}

function misuse(where: string, what: string, next: string): Problem {
  return new Problem(what, { where, next, exitCode: 2 });
}
