import { buildCar } from '../../car/build-car.ts';
import { type HeatState, withHeat } from '../../car/heat-state.ts';
import { buildCorner, variantOfSheet } from '../../corner/build-corner.ts';
import type { CallWord } from '../../corner/call-word.ts';
import type { CornerVariant } from '../../corner/corner-sheet.ts';
import { liveZone } from '../../live/build-live-zone.ts';
import type { LiveZone } from '../../live/live-zone.ts';
import { type DerivedTarget, deriveTarget } from '../../target/derive/derive-target.ts';
import { calledVariant } from './late-calls.ts';
import type { LivePlan } from './live-plan.ts';

/**
 * The braking zone of one rep.
 *
 * @param heat temperatures of the brakes at its start; null for the car's own
 * @param word of a late call; null for none
 * @throws Problem where the corner needs no brake in that car
 */
export function zoneOf(plan: LivePlan, heat: HeatState | null, word: CallWord | null): LiveZone {
  const { sheet, controls } = plan;
  const prepared = variantOfSheet(sheet, plan.variant);
  const before = derivedFor(plan, prepared, heat);
  const common = { advice: sheet.advice, controls };
  if (word === null) return liveZone({ ...common, derived: before, call: null });
  const derived = derivedFor(plan, calledVariant(sheet, prepared, word), heat);
  return liveZone({ ...common, derived, call: { word, before } });
}

function derivedFor(
  { car: file, sheet }: LivePlan,
  variant: CornerVariant,
  heat: HeatState | null,
): DerivedTarget {
  const car = buildCar(file, variant.car);
  const corner = buildCorner({ ...sheet, variants: [variant] }, null);
  return deriveTarget(heat === null ? car : withHeat(car, heat), corner);
}
