import { linePressuresPa } from '../car/brakes.ts';
import { buildCar } from '../car/build-car.ts';
import { buildCorner, variantOfSheet } from '../corner/build-corner.ts';
import { Problem } from '../problem.ts';
import type { EditedCar } from '../screens/edit/edit-view.ts';
import { type DerivedTarget, deriveTarget } from '../target/derive/derive-target.ts';
import { type DerivedFor, derivedFor } from '../target/derive/derived-for.ts';
import { drivenCurve } from '../target/derive/driven-curve.ts';
import { fullScaleForceN } from '../target/derive/full-scale-force.ts';
import type { Target } from '../target/target.ts';
import { barFromPascals } from '../units.ts';
import { findCar } from './car-files.ts';
import type { CommandInput } from './command.ts';
import { findCorner } from './corner-files.ts';
import { textOption } from './option-value.ts';

type Wanted = Omit<DerivedFor, 'variant'> & { readonly variant: string | null };

/** The car and the corner that a target is looked at with; a reason where the file names some that are not there. */
export interface FoundCar {
  readonly derived: DerivedTarget | null;
  readonly note: string | null;
}

/**
 * The car and the corner that the options name, or else those that the file was derived for.
 * @throws Problem for half of the options, and for names that are not known
 */
export async function findEditedCar(
  values: CommandInput['values'],
  text: string,
  dataDir: string,
): Promise<FoundCar> {
  const asked = askedFor(values);
  if (asked !== null) return { derived: await derive(asked, dataDir), note: null };
  const named = derivedFor(text);
  if (named === null) return { derived: null, note: null };
  try {
    return { derived: await derive(named, dataDir), note: null };
  } catch (error) {
    if (!(error instanceof Problem)) throw error;
    const note = `What the file was derived for is not here (${error.message}): give --car and --corner.`;
    return { derived: null, note };
  }
}

function askedFor({ car, corner, variant }: CommandInput['values']): Wanted | null {
  const [first, second] = [textOption(car), textOption(corner)];
  if (first !== null && second !== null)
    return { car: first, corner: second, variant: textOption(variant) };
  if (first === null && second === null && textOption(variant) === null) return null;
  throw new Problem('a car needs its corner and a corner its car', {
    where: 'target edit',
    next: 'Give both --car and --corner, or neither.',
    exitCode: 2,
  });
}

async function derive({ car, corner, variant }: Wanted, dataDir: string): Promise<DerivedTarget> {
  const carFile = await findCar(car, dataDir);
  const sheet = await findCorner(corner, dataDir);
  const built = buildCar(carFile, variantOfSheet(sheet, variant).car);
  return deriveTarget(built, buildCorner(sheet, variant));
}

/** What the car does with the target. */
export function editedCar(derived: DerivedTarget, target: Target): EditedCar {
  const { car, corner } = derived;
  return {
    name: `${car.id}, ${corner.id}, ${corner.variant}`,
    driven: drivenCurve(derived, target),
    limitAt: limitOf(derived, target),
  };
}

/** What the derivation asks for at a place of the target's axis, as a level of the target, straight between its points. */
function limitOf({ zone, car }: DerivedTarget, target: Target): (at: number) => number {
  const { domain } = target;
  const fullScaleN = fullScaleForceN(target, car);
  const points = zone.points.map(({ timeS, distanceM, pedalForceN }) => ({
    x: domain === 'time' ? timeS : -distanceM,
    level: pedalForceN / fullScaleN,
  }));
  return (at) => {
    const x = domain === 'time' ? at : -at;
    const next = points.findIndex((point) => point.x >= x);
    if (next <= 0) return 0;
    const [a, b] = [points[next - 1]!, points[next]!];
    return a.level + ((b.level - a.level) * (x - a.x)) / (b.x - a.x || 1);
  };
}

/** Front line pressure at level 1, bar: what the file says, or else the car; null where neither does. */
export function fullScaleBar(target: Target, derived: DerivedTarget | null): number | null {
  if (target.fullScale.pressureBar !== null) return target.fullScale.pressureBar;
  if (derived === null) return null;
  const { car } = derived;
  return barFromPascals(linePressuresPa(car.brakes, fullScaleForceN(target, car)).front);
}
