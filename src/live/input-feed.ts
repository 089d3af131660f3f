import { QUANTA_PER_BRAKE_LEVEL, QUANTA_PER_DEGREE, QUANTA_PER_LEVEL } from '../trace/quanta.ts';
import { onGrid } from '../trace/quantise-record.ts';
import type { Track } from '../trace/track.ts';
import { type LiveInputs, NO_INPUTS } from './live-inputs.ts';

/** What each control holds now; 0 before it has ever moved. */
export interface HeldInputs {
  /** Level 0..1, like the next two. */
  readonly brake: number;
  readonly throttle: number;
  readonly clutch: number;
  readonly steeringDeg: number;
}

/** What the rig last said of each axis; null before it has ever moved. */
export interface AxisValues {
  /** Level 0..1, like the next two. */
  readonly brake: number | null;
  readonly throttle: number | null;
  readonly clutch: number | null;
  /** Degrees at the wheel, left positive. */
  readonly steering: number | null;
}

export const NOTHING_SAID: AxisValues = {
  brake: null,
  throttle: null,
  clutch: null,
  steering: null,
};

/** The same on the record's grid. */
export function heldInputs({ brake, throttle, clutch, steering }: AxisValues): HeldInputs {
  return {
    brake: onGrid(brake ?? 0, QUANTA_PER_BRAKE_LEVEL),
    throttle: onGrid(throttle ?? 0, QUANTA_PER_LEVEL),
    clutch: onGrid(clutch ?? 0, QUANTA_PER_LEVEL),
    steeringDeg: onGrid(steering ?? 0, QUANTA_PER_DEGREE),
  };
}

/** Samples on their way to the car: each is held from the first step at or after its time. */
export interface InputFeed {
  readonly inputs: LiveInputs;
  readonly held: { -readonly [K in keyof HeldInputs]: HeldInputs[K] };
  readonly next: { brake: number; throttle: number; clutch: number; steering: number };
  nextShift: number;
}

/** A feed of what an earlier call left over and what has come since. */
export function feedOf(held: HeldInputs, waiting: LiveInputs, inputs: LiveInputs): InputFeed {
  return {
    inputs: waiting === NO_INPUTS ? inputs : joined(waiting, inputs),
    held: { ...held },
    next: { brake: 0, throttle: 0, clutch: 0, steering: 0 },
    nextShift: 0,
  };
}

/** Takes every sample that is due at `timeS`. */
export function feedUntil(feed: InputFeed, timeS: number): void {
  const { inputs, held, next } = feed;
  next.brake = dueAt(inputs.brake, next.brake, timeS);
  if (next.brake > 0) held.brake = inputs.brake.value[next.brake - 1]!;
  next.throttle = dueAt(inputs.throttle, next.throttle, timeS);
  if (next.throttle > 0) held.throttle = inputs.throttle.value[next.throttle - 1]!;
  next.clutch = dueAt(inputs.clutch, next.clutch, timeS);
  if (next.clutch > 0) held.clutch = inputs.clutch.value[next.clutch - 1]!;
  next.steering = dueAt(inputs.steering, next.steering, timeS);
  if (next.steering > 0) held.steeringDeg = inputs.steering.value[next.steering - 1]!;
}

function dueAt({ timeS }: Track, from: number, untilS: number): number {
  let next = from;
  while (next < timeS.length && timeS[next]! <= untilS) next++;
  return next;
}

/** What has not been due yet. */
export function leftOver({ inputs, next, nextShift }: InputFeed): LiveInputs {
  const rest = ({ timeS, value }: Track, from: number): Track => ({
    timeS: timeS.slice(from),
    value: value.slice(from),
  });
  const left = {
    brake: rest(inputs.brake, next.brake),
    throttle: rest(inputs.throttle, next.throttle),
    clutch: rest(inputs.clutch, next.clutch),
    steering: rest(inputs.steering, next.steering),
    shifts: inputs.shifts.slice(nextShift),
  };
  return isEmpty(left) ? NO_INPUTS : left;
}

function isEmpty({ brake, throttle, clutch, steering, shifts }: LiveInputs): boolean {
  const samples = brake.timeS.length + throttle.timeS.length + clutch.timeS.length;
  return samples + steering.timeS.length + shifts.length === 0;
}

function joined(a: LiveInputs, b: LiveInputs): LiveInputs {
  return {
    brake: both(a.brake, b.brake),
    throttle: both(a.throttle, b.throttle),
    clutch: both(a.clutch, b.clutch),
    steering: both(a.steering, b.steering),
    shifts: [...a.shifts, ...b.shifts],
  };
}

function both(a: Track, b: Track): Track {
  return { timeS: chained(a.timeS, b.timeS), value: chained(a.value, b.value) };
}

function chained(a: Float64Array, b: Float64Array): Float64Array {
  const all = new Float64Array(a.length + b.length);
  all.set(a);
  all.set(b, a.length);
  return all;
}
