import { targetForce } from '../drill/target-force.ts';
import type { Target } from '../target/target.ts';
import { forceText, type TextUnits } from '../unit-text.ts';

/**
 * What a driver has to know of the force behind the levels of a practice; null where all are shares of the own full
 * scale anyway.
 */
export function forceRemark(
  ownFullScaleN: number | null,
  targets: readonly Pick<Target, 'fullScale' | 'peakLevel'>[],
  units: TextUnits,
): string | null {
  const of = (force: ReturnType<typeof targetForce>) =>
    targets.filter((target) => targetForce(ownFullScaleN, target) === force);
  const [reached, tooMuch] = [of('reached'), of('too much')];
  if (ownFullScaleN === null || reached.length + tooMuch.length === 0) return null;
  const own = forceText(ownFullScaleN, units);
  if (reached.length === 0) {
    const askedN = Math.max(...tooMuch.map(peakN));
    return `The car takes ${forceText(askedN, units)}, your full scale is ${own}: levels are shares of yours.`;
  }
  const forces = new Set(reached.map(({ fullScale }) => fullScale.pedalForceN!));
  if (reached.length === targets.length && forces.size === 1)
    return `100 % is ${forceText([...forces][0]!, units)} at the pedal, as in the car.`;
  return `Targets of up to ${own} at the pedal are drilled at their force, the others as shares of it.`;
}

function peakN({ fullScale, peakLevel }: Pick<Target, 'fullScale' | 'peakLevel'>): number {
  return peakLevel * (fullScale.pedalForceN ?? 0);
}
