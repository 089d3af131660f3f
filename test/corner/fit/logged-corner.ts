import { buildCar } from '../../../src/car/build-car.ts';
import { buildCorner } from '../../../src/corner/build-corner.ts';
import { type DerivedTarget, deriveTarget } from '../../../src/target/derive/derive-target.ts';
import { CARS, SHEETS } from '../../target/derive/bundled-zones.ts';

/** How a logger sees a drive. */
export interface Logger {
  readonly rateHz: number;
  /** Time constant of a first-order filter on every channel. */
  readonly lagS: number;
  /** Of the noise, as a multiple of the usual: 0.1 km/h, 0.3 bar, 0.3 m/s^2, 0.6 deg/s, 0.5 deg. */
  readonly noise: number;
  readonly channels: readonly Channel[];
  readonly seed: number;
}

export type Channel = 'yaw' | 'ay' | 'steering' | 'gear';

export const USUAL_LOGGER: Logger = {
  rateHz: 50,
  lagS: 0.02,
  noise: 1,
  channels: ['yaw', 'ay', 'steering', 'gear'],
  seed: 1,
};

const KNOWN = new Map<string, DerivedTarget>();

/** A corner of known sheet, as a car derives it; each once. */
export function derivedOf(cornerId: string, carId: string): DerivedTarget {
  const key = `${cornerId}/${carId}`;
  const derived = KNOWN.get(key) ?? deriveNow(cornerId, carId);
  KNOWN.set(key, derived);
  return derived;
}

function deriveNow(cornerId: string, carId: string): DerivedTarget {
  const sheet = SHEETS.find(({ id }) => id === cornerId)!;
  const car = CARS.find(({ id }) => id === carId)!;
  return deriveTarget(
    buildCar(car, sheet.variants[0]!.car),
    buildCorner(sheet, sheet.variants[0]!.name),
  );
}

interface State {
  readonly timeS: number;
  readonly mps: number;
  readonly bar: number;
  readonly curvature: number;
  readonly steeringRad: number;
  readonly gear: number;
}

const STATES = new WeakMap<DerivedTarget, readonly State[]>();

/** The states of a zone, each once: several loggers see the same drive. */
function statesOf(derived: DerivedTarget): readonly State[] {
  const states = STATES.get(derived) ?? drivenStates(derived);
  STATES.set(derived, states);
  return states;
}

const STEP_S = 0.001;
const LEAD_S = 3;
const EXIT_MPS2 = 3;
const AFTER_S = 2;

/**
 * The derived zone in time: a lead-in at the approach speed, the zone, the arc at its speed, the exit under power.
 * Steering is that of the derived points, and beyond them in proportion to curvature.
 */
function drivenStates({ zone: { points }, corner }: DerivedTarget): State[] {
  const [first, last] = [points[0]!, points[points.length - 1]!];
  const { path, approachSpeedMps } = corner;
  const exitFromM = path.lengthM - path.segments[path.segments.length - 1]!.lengthM;
  const states: State[] = [];
  let [timeS, sM, mps] = [0, first.sM - LEAD_S * approachSpeedMps, approachSpeedMps];
  const step = (state: Omit<State, 'timeS' | 'mps' | 'curvature'>): void => {
    states.push({ timeS, mps, curvature: path.curvatureAt(sM), ...state });
    sM += mps * STEP_S;
    timeS += STEP_S;
  };
  while (sM < first.sM) step({ bar: 0, steeringRad: 0, gear: corner.gears.approach });
  for (let at = 0; sM < last.sM; ) {
    while (points[at + 1]!.sM <= sM) at++;
    const [a, b] = [points[at]!, points[at + 1]!];
    const between = (from: number, to: number): number =>
      from + ((sM - a.sM) / (b.sM - a.sM)) * (to - from);
    mps = between(a.speedMps, b.speedMps);
    const bar = between(a.pressureFrontPa, b.pressureFrontPa) / 1e5;
    step({ bar, steeringRad: between(a.steeringRad, b.steeringRad), gear: a.gear });
  }
  const perCurvature = last.steeringRad / path.curvatureAt(last.sM);
  for (let left = AFTER_S; left > 0; left -= sM > path.lengthM ? STEP_S : 0) {
    if (sM > exitFromM) mps += EXIT_MPS2 * STEP_S;
    step({ bar: 0, steeringRad: perCurvature * path.curvatureAt(sM), gear: last.gear });
  }
  return states;
}

/** Gaussian noise by the sum of twelve uniform numbers (Park and Miller's generator). */
function noiseOf(seed: number): () => number {
  let state = 20261127 + 7919 * seed;
  return () => {
    let sum = -6;
    for (let i = 0; i < 12; i++) {
      state = (state * 48271) % 2147483647;
      sum += state / 2147483647;
    }
    return sum;
  };
}

const COLUMNS: Readonly<Record<Channel, string>> = {
  yaw: 'yaw_rate [deg/s]',
  ay: 'lateral_acceleration [g]',
  steering: 'steering_angle [deg]',
  gear: 'gear',
};

/** The CSV of a logger: km/h, bar, degrees, g; steering positive to the right. */
export function csvOf(derived: readonly DerivedTarget[], logger: Partial<Logger> = {}): string {
  const { rateHz, lagS, noise, channels, seed } = { ...USUAL_LOGGER, ...logger };
  const random = noiseOf(seed);
  const rows: string[] = [];
  let startS = 0;
  for (const one of derived) {
    const filtered = new Map<string, number>();
    const kept = lagS > 0 ? Math.exp(-STEP_S / lagS) : 0;
    const lagged = (name: string, value: number): number => {
      const before = filtered.get(name) ?? value;
      const now = before + (value - before) * (1 - kept);
      filtered.set(name, now);
      return now;
    };
    const states = statesOf(one);
    const every = Math.round(1 / rateHz / STEP_S);
    states.forEach((state, i) => {
      const { mps, curvature } = state;
      const kmh = lagged('v', 3.6 * mps);
      const bar = lagged('p', state.bar);
      const yaw = lagged('r', (curvature * mps * 180) / Math.PI);
      const ay = lagged('a', (curvature * mps * mps) / 9.80665);
      const steering = lagged('d', (-state.steeringRad * 180) / Math.PI);
      if (i % every !== 0) return;
      const value: Readonly<Record<Channel, string>> = {
        yaw: (yaw + noise * 0.6 * random()).toFixed(2),
        ay: (ay + noise * 0.03 * random()).toFixed(3),
        steering: (steering + noise * 0.5 * random()).toFixed(1),
        gear: `${state.gear}`,
      };
      rows.push(
        [
          (startS + state.timeS).toFixed(3),
          Math.max(0, bar + noise * 0.3 * random()).toFixed(2),
          Math.max(0, kmh + noise * 0.1 * random()).toFixed(2),
          ...channels.map((channel) => value[channel]),
        ].join(';'),
      );
    });
    startS += states.length * STEP_S + 0.05;
  }
  const header = ['time [s]', 'brake_pressure_front [bar]', 'speed [km/h]'];
  return `${[...header, ...channels.map((channel) => COLUMNS[channel])].join(';')}\n${rows.join('\n')}\n`;
}
