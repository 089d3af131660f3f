/** One braking zone as a car drives it: parallel arrays, in SI. */
export interface DrivenZone {
  readonly time_s: readonly number[];
  readonly speed_mps: readonly number[];
  readonly pressure_front_bar: readonly number[];
  readonly steering_deg: readonly number[];
}

/** How a driver and a logger bend it. */
export interface LoggedDrive {
  readonly laps: number;
  /** The release takes so many times as long from the peak on. */
  readonly slower: number;
  /** The pressure is so many times as high. */
  readonly heavier: number;
  readonly seed: number;
}

const RATE_HZ = 50;
const CRUISE_S = 6;
const BAR_TO_PSI = 14.503773773; // NIST SP 811, appendix B.8
const SENSOR_LAG_S = 0.02;

/** Park and Miller's generator, uniform in -0.5..0.5. */
function noiseOf(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647 - 0.5;
  };
}

function valueAt(times: readonly number[], values: readonly number[], at: number): number {
  const next = times.findIndex((time) => time >= at);
  if (next <= 0) return next === 0 ? values[0]! : values.at(-1)!;
  const share = (at - times[next - 1]!) / (times[next]! - times[next - 1]!);
  return values[next - 1]! + share * (values[next]! - values[next - 1]!);
}

/**
 * A log as a circuit's laptop might hand it over: semicolons and decimal commas, pounds per square inch, kilometres per
 * hour, a sensor that is late and noisy, a lap a braking zone. The speed is that of the car, whatever the pressure says.
 */
export function eveningLog(zone: DrivenZone, { laps, slower, heavier, seed }: LoggedDrive): string {
  const noise = noiseOf(seed);
  const { time_s: times, pressure_front_bar: bars } = zone;
  const peakS = times[bars.indexOf(Math.max(...bars))]!;
  const lasts = peakS + slower * (times.at(-1)! - peakS);
  const lapS = CRUISE_S + lasts + CRUISE_S;
  const german = (value: number, digits: number): string => value.toFixed(digits).replace('.', ',');
  const rows = ['Time [s];Lap;P brake F [psi];V ground [km/h];Steer [deg]'];
  for (let i = 0; i < laps * lapS * RATE_HZ; i++) {
    const lap = Math.floor(i / RATE_HZ / lapS);
    // no two laps are quite alike: a little more or less pedal, a little sooner or later
    const ease = 1 + 0.02 * Math.sin(2.1 * lap);
    const at = i / RATE_HZ - lap * lapS - CRUISE_S;
    const driven = (t: number): number => (t <= peakS ? t : peakS + (t - peakS) / (slower * ease));
    const inZone = (t: number): boolean => t >= 0 && driven(t) <= times.at(-1)!;
    const bar = inZone(at - SENSOR_LAG_S)
      ? heavier * ease * valueAt(times, bars, driven(at - SENSOR_LAG_S))
      : 0;
    const mps = inZone(at)
      ? valueAt(times, zone.speed_mps, driven(at))
      : at < 0
        ? zone.speed_mps[0]!
        : Math.min(zone.speed_mps[0]!, zone.speed_mps.at(-1)! + 7 * (at - lasts));
    const wheel = inZone(at) ? valueAt(times, zone.steering_deg, driven(at)) : 0;
    rows.push(
      [
        german(i / RATE_HZ, 2),
        String(lap + 1),
        german(Math.max(0, BAR_TO_PSI * (bar + 0.4 * noise())), 1),
        german(3.6 * mps + 0.3 * noise(), 1),
        german(wheel + 0.5 * noise(), 1),
      ].join(';'),
    );
  }
  return `${rows.join('\n')}\n`;
}
