import type { ControlRecording } from '../../../src/input/hid/control-recording.ts';
import {
  axisCounts,
  PRESSES_S,
  record,
  type SimulatedDevice,
  type SimulatedField,
  STILL,
  seededRandom,
  threePresses,
  twoSweeps,
} from './simulated-device.ts';

/** Examples are the same every time; properties take another seed from the environment. */
export const EXAMPLE_SEED = 20260101;
export const SEED: number = Number(process.env.SEED ?? EXAMPLE_SEED);

const brakeOf = (m: { brake: number }): number => m.brake;
const throttleOf = (m: { throttle: number }): number => m.throttle;
const steeringOf = (m: { steering: number }): number => (m.steering + 1) / 2;

export type Place = [bitOffset: number, bitSize: number];
export const at = (
  [bitOffset, bitSize]: Place,
  counts: SimulatedField['counts'],
): SimulatedField => ({
  bitOffset,
  bitSize,
  counts,
});
/** An unsigned pedal over all its counts, or those given. */
export const brake = (
  place: Place,
  rest: number = 0,
  full: number = 2 ** place[1] - 1,
  noise: number = 0,
): SimulatedField => at(place, axisCounts(rest, full, brakeOf, noise));
export const throttle = (
  place: Place,
  rest: number = 0,
  full: number = 2 ** place[1] - 1,
  noise: number = 0,
): SimulatedField => at(place, axisCounts(rest, full, throttleOf, noise));
export const wheel = (place: Place, noise: number = 0): SimulatedField =>
  at(place, axisCounts(0, 2 ** place[1] - 1, steeringOf, noise));
export const counter = (place: Place, step: number = 1): SimulatedField =>
  at(place, ({ index }) => (index * step) % 2 ** place[1]);
export const checksum = (place: Place): SimulatedField =>
  at(place, ({ bytes }) => bytes.reduce((sum, byte) => (sum + byte) % 256, 0));
export const constant = (place: Place, value: number): SimulatedField => at(place, () => value);

export const unnumbered = (
  bytes: number,
  fields: SimulatedField[],
  rateHz: number = 250,
): SimulatedDevice => ({
  rateHz,
  bytes: { 0: bytes },
  fields,
});

/** The setup as the driver goes through it; the throttle and the wheel are recorded as "others". */
export function recordBrake(
  device: SimulatedDevice,
  jog: number = 0,
  seed: number = EXAMPLE_SEED,
): ControlRecording {
  const random = seededRandom(seed);
  const rest = record(device, () => STILL, 2, random, 0);
  const press = (t: number): { brake: number; steering: number } => ({
    brake: threePresses(t),
    steering: jog * threePresses(1.15 * t),
  });
  const moved = record(device, press, PRESSES_S, random, 1003);
  const throttled = record(device, (t) => ({ throttle: threePresses(t) }), PRESSES_S, random, 4001);
  const steered = record(device, (t) => ({ steering: twoSweeps(t) }), 5.2, random, 9001);
  return { rest, moved, others: [throttled, steered], numbered: null, fields: null };
}
