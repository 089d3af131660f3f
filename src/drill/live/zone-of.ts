import { buildCar } from '../../car/build-car.ts';
import { type HeatState, withHeat } from '../../car/heat-state.ts';
import { buildCorner, variantOfSheet } from '../../corner/build-corner.ts';
import type { CallWord } from '../../corner/call-word.ts';
import { liveZone } from '../../live/build-live-zone.ts';
import { deriveAfterCall } from '../../live/derive-after-call.ts';
import type { LiveZone } from '../../live/live-zone.ts';
import { type DerivedTarget, deriveTarget } from '../../target/derive/derive-target.ts';
import type { LivePlan } from './live-plan.ts';

/** What a zone is made of. */
type ZoneParts = Pick<LivePlan, 'car' | 'sheet' | 'variant' | 'controls'>;

/** Zones without heat and call: what is drilled and its first rep are the same. */
const plain = new WeakMap<ZoneParts, LiveZone>();

/**
 * The braking zone of one rep, worked out once where it is only what it is made of.
 *
 * @param heat temperatures of the brakes at its start; null for the car's own
 * @param word of a late call; null for none
 * @throws Problem where the corner needs no brake in that car, or no variant answers to the call
 */
export function zoneOf(parts: ZoneParts, heat: HeatState | null, word: CallWord | null): LiveZone {
  if (heat !== null || word !== null) return workedOut(parts, heat, word);
  const known = plain.get(parts) ?? workedOut(parts, null, null);
  plain.set(parts, known);
  return known;
}

function workedOut(parts: ZoneParts, heat: HeatState | null, word: CallWord | null): LiveZone {
  const { car, sheet, variant, controls } = parts;
  const before = prepared(parts, heat);
  const common = { advice: sheet.advice, controls };
  if (word === null) return liveZone({ ...common, derived: before, call: null });
  const derived = deriveAfterCall({ carFile: car, sheet, variant, word, heat });
  return liveZone({ ...common, derived, call: { word, before } });
}

/** What the driver prepares for. */
function prepared({ car: file, sheet, variant }: ZoneParts, heat: HeatState | null): DerivedTarget {
  const car = buildCar(file, variantOfSheet(sheet, variant).car);
  return deriveTarget(heat === null ? car : withHeat(car, heat), buildCorner(sheet, variant));
}
