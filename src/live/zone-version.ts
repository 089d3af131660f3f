import type { Car } from '../car/car.ts';
import type { Corner } from '../corner/corner.ts';
import { fingerprint } from '../profile/fingerprint.ts';
import type { LateCall } from './live-zone.ts';

/** Raised when the physics of the live car or of its targets change, so that reps from before and after do not compare. */
const PHYSICS = 3;
/** Slope and bank are functions: they are looked at this far apart, m. */
const ROAD_STEP_M = 5;

/**
 * Fingerprint of everything that decides what a rep in this zone is worth: car, corner with its variant, the late call.
 * Left out are the temperatures of discs and pads and the pad friction that follows from them: over a stint they move
 * the pedal force that the target asks for, and the reps of a stint have to compare. Left out as well is what the rig
 * lets the driver decide.
 */
export function zoneVersion(
  car: Car,
  corner: Corner,
  call: Pick<LateCall, 'word' | 'before'> | null,
): string {
  const called = call && [call.word, call.before.corner.variant];
  return fingerprint(JSON.stringify([PHYSICS, coldCar(car), roadOf(corner), called]));
}

function coldCar({ brakes, discStartC: _, padStartC: __, ...car }: Car): unknown {
  const { padFriction: ___, ...front } = brakes.front;
  const { padFriction: ____, ...rear } = brakes.rear;
  return { ...car, brakes: { ...brakes, front, rear } };
}

function roadOf(corner: Corner): unknown {
  const { slopeAt, bankAt, path, coachMark: _, ...rest } = corner;
  const places: number[] = [];
  for (let sM = -corner.approachM; sM <= path.lengthM; sM += ROAD_STEP_M) places.push(sM);
  return [rest, path.segments, places.map((sM) => [slopeAt(sM), bankAt(sM)])];
}
