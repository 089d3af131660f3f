import type { Car } from '../car/car.ts';
import type { CallWord } from '../corner/call-word.ts';
import type { Corner } from '../corner/corner.ts';
import type { DerivedTarget } from '../target/derive/derive-target.ts';
import { targetOfDerived } from '../target/derive/target-of-derived.ts';
import { overTime } from '../target/over-time.ts';
import type { Target } from '../target/target.ts';
import { callPlaceM } from './call-place.ts';
import { type LateCall, LEAD_IN_S, type LiveControls, type LiveZone } from './live-zone.ts';
import { zoneVersion } from './zone-version.ts';

interface LiveZoneOptions {
  /** The target that counts, with its car and its corner: after a late call the one that it asks for. */
  readonly derived: DerivedTarget;
  /** Of the coach, or null. */
  readonly advice: string | null;
  readonly controls: LiveControls;
  /** A late call and what the driver prepared for; null for none. */
  readonly call: { readonly word: CallWord; readonly before: DerivedTarget } | null;
}

/**
 * A braking zone to be driven once. Its target's id is `CAR/CORNER/VARIANT`; its version is a fingerprint of what decides
 * the score and stays the same while the brakes get hot, so that the reps of a stint compare.
 */
export function liveZone({ derived, advice, controls, call }: LiveZoneOptions): LiveZone {
  const { car, corner } = derived;
  const prepared = call?.before ?? derived;
  const { brakePointM } = prepared.zone;
  return {
    car,
    corner,
    derived,
    target: targetOfZone(derived, advice, call),
    rollFromM: brakePointM - LEAD_IN_S * prepared.corner.approachSpeedMps,
    coachMark: corner.coachMark,
    controls,
    call: call && { ...call, atM: callPlaceM(derived, call.before) },
  };
}

function targetOfZone(
  derived: DerivedTarget,
  advice: string | null,
  call: Pick<LateCall, 'word' | 'before'> | null,
): Target {
  const { car, corner } = derived;
  const id = zoneId(car, corner);
  const target = overTime(targetOfDerived(derived, advice, id));
  return { ...target, id, version: zoneVersion(car, corner, call) };
}

/** `CAR/CORNER/VARIANT`. */
function zoneId(car: Car, corner: Corner): string {
  return `${car.id}/${corner.id}/${corner.variant}`;
}
