import type { LoggedZone, ZoneSamples } from '../../trace/log/logged-zone.ts';
import { localQuadratic } from './local-quadratic.ts';

/** What a logged zone says about its corner, in SI; all of one length, where known. */
export interface FitSignals {
  readonly number: number;
  readonly timeS: Float64Array;
  readonly speedMps: Float64Array;
  /** Along the way driven, the integral of speed; 0 at the onset of the brake. */
  readonly placeM: Float64Array;
  /** Positive to the left (ISO 8855). */
  readonly yawRadps: Float64Array | null;
  readonly lateralMps2: Float64Array | null;
  /** At the steering wheel, in the log's own sign where nobody knows it. */
  readonly steeringRad: Float64Array | null;
  readonly isSteeringSigned: boolean;
  readonly gear: Float64Array | null;
  readonly onsetS: number;
  readonly slowestS: number;
  readonly slowestMps: number;
  readonly approachMps: number;
}

/** A zone that no corner can be made of, and why. */
export interface NotFitted {
  readonly number: number;
  readonly reason: string;
}

/** Speed is smoothed over so long on each side. */
export const SMOOTH_S = 0.15;
const RADIANS_PER_DEGREE = Math.PI / 180;
const FEWEST_ROWS = 12;
const STANDING_MPS = 3;
const LEAST_LOST_MPS = 3;
/** Still slowing like this in the last row, the zone ends before its slowest point. */
const STILL_SLOWING_MPS2 = 2;

/**
 * The signals of a zone and its slowest point.
 * @param onsetS when the brake goes on, on the zone's clock; null where that cannot be seen
 */
export function fitSignals(
  { number, samples: zone, after }: Pick<LoggedZone, 'number' | 'samples' | 'after'>,
  onsetS: number | null,
  steeringPositive: 'left' | 'right' | null,
): FitSignals | NotFitted {
  const refused = (reason: string): NotFitted => ({ number, reason });
  const samples = after === null ? zone : joined(zone, after);
  const [time, speed] = [samples.get('time')!, samples.get('speed')];
  if (speed === undefined) return refused('the log has no speed');
  if (onsetS === null) return refused('no onset of the brake can be seen');
  const rows = [...time.keys()].filter(
    (i) => Number.isFinite(speed[i]!) && (i === 0 || time[i]! > time[i - 1]!),
  );
  if (rows.length < FEWEST_ROWS) return refused(`it has ${rows.length} rows with a speed`);
  const taken = (values: Float64Array | undefined): Float64Array | null => {
    const column = values && Float64Array.from(rows, (i) => values[i]!);
    return column?.every(Number.isFinite) ? column : null;
  };
  const [timeS, speedMps] = [taken(time)!, taken(speed)!];
  if (timeS[0]! > onsetS) return refused('it begins after the brake went on');
  const slowest = slowestOf(timeS, speedMps, onsetS);
  const approachMps = localQuadratic(timeS, speedMps, onsetS, SMOOTH_S).value;
  const reason = reasonAgainst(timeS, speedMps, approachMps, slowest);
  if (reason !== null) return refused(reason);
  const toLeft = steeringPositive === 'right' ? -RADIANS_PER_DEGREE : RADIANS_PER_DEGREE;
  return {
    number,
    timeS,
    speedMps,
    placeM: placesOf(timeS, speedMps, onsetS),
    yawRadps: taken(samples.get('yaw-rate')),
    lateralMps2: taken(samples.get('lateral-acceleration')),
    steeringRad: taken(samples.get('steering'))?.map((deg) => deg * toLeft) ?? null,
    isSteeringSigned: steeringPositive !== null,
    gear: taken(samples.get('gear')),
    onsetS,
    slowestS: slowest.timeS,
    slowestMps: slowest.speedMps,
    approachMps,
  };
}

/** A zone with the way out behind it; only channels that both have. */
function joined(zone: ZoneSamples, after: ZoneSamples): ZoneSamples {
  const both = [...zone].filter(([role]) => after.has(role));
  return new Map(
    both.map(([role, values]) => [role, Float64Array.of(...values, ...after.get(role)!)]),
  );
}

interface Slowest {
  readonly timeS: number;
  readonly speedMps: number;
}

/** A car that has gained this much is on its way out. */
const CLEAR_RISE_MPS = 2;
/** Above the least speed, beyond the noise of loggers. Four times as much is twice as far away. */
const [NEAR_MPS, FAR_MPS] = [0.1, 0.4];

/**
 * The least smoothed speed, and where it begins: noise and the flat bottom of an arc hide the place itself, so it is
 * reckoned from two speeds a little above, by the parabola of a deceleration that falls evenly to nothing.
 */
function slowestOf(timeS: Float64Array, speedMps: Float64Array, onsetS: number): Slowest {
  const after = timeS.filter((time) => time >= onsetS);
  const smooth = after.map((at) => localQuadratic(timeS, speedMps, at, SMOOTH_S).value);
  const place = firstLeast(smooth);
  const least = smooth[place]!;
  const reached = (aboveMps: number): number => crossing(after, smooth, least + aboveMps);
  const nearS = reached(NEAR_MPS);
  return { timeS: Math.min(after[place]!, 2 * nearS - reached(FAR_MPS)), speedMps: least };
}

/** Place of the least value before the first clear rise: what follows is another corner. */
function firstLeast(values: Float64Array): number {
  let least = 0;
  for (let i = 0; i < values.length && values[i]! < values[least]! + CLEAR_RISE_MPS; i++)
    if (values[i]! < values[least]!) least = i;
  return least;
}

/** When a signal first comes down to a value, between samples. */
function crossing(timeS: Float64Array, values: Float64Array, value: number): number {
  const i = values.findIndex((one) => one <= value);
  if (i <= 0) return timeS[0]!;
  const [from, to] = [values[i - 1]!, values[i]!];
  return timeS[i - 1]! + ((from - value) / (from - to)) * (timeS[i]! - timeS[i - 1]!);
}

function reasonAgainst(
  timeS: Float64Array,
  speedMps: Float64Array,
  approachMps: number,
  slowest: Slowest,
): string | null {
  const endS = timeS.at(-1)!;
  const { slope } = localQuadratic(timeS, speedMps, endS, SMOOTH_S);
  if (speedMps[0]! < STANDING_MPS) return 'it begins with a standing car: no approach to a corner';
  if (slowest.speedMps < STANDING_MPS) return 'the car stops in it: no speed through a corner';
  if (endS - slowest.timeS < 2 * SMOOTH_S && slope < -STILL_SLOWING_MPS2)
    return 'it ends while the car still slows: the slowest point was not logged';
  if (approachMps - slowest.speedMps < LEAST_LOST_MPS)
    return `the car hardly slows in it: ${(approachMps - slowest.speedMps).toFixed(1)} m/s`;
  return null;
}

/** Trapezes, 0 at the onset. */
function placesOf(timeS: Float64Array, speedMps: Float64Array, onsetS: number): Float64Array {
  const places = new Float64Array(timeS.length);
  for (let i = 1; i < places.length; i++)
    places[i] =
      places[i - 1]! + ((speedMps[i]! + speedMps[i - 1]!) / 2) * (timeS[i]! - timeS[i - 1]!);
  const zero = placeAt(timeS, places, onsetS);
  return places.map((place) => place - zero);
}

/** A value between samples, by straight lines; the end values outside. */
export function placeAt(timeS: Float64Array, values: Float64Array, atS: number): number {
  const right = timeS.findIndex((time) => time >= atS);
  if (right < 0) return values.at(-1)!;
  if (right === 0) return values[0]!;
  const share = (atS - timeS[right - 1]!) / (timeS[right]! - timeS[right - 1]!);
  return values[right - 1]! + share * (values[right]! - values[right - 1]!);
}
