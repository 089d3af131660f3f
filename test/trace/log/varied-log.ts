/**
 * A made-up log of laps with two braking zones that differ from lap to lap by known factors: nothing here comes from
 * what is tested. Pressure in bar at 100 Hz, with a wheel; deceleration is 0.2 m/s^2 a bar.
 */
export interface VariedLog {
  readonly laps: number;
  /** Of lap `i`: release later, longer, all of it heavier. */
  readonly timingS: (lap: number) => number;
  readonly rate: (lap: number) => number;
  readonly amount: (lap: number) => number;
  readonly steering?: boolean;
  /** Of the approach. */
  readonly entryMps?: (lap: number) => number;
}

export const VARIED = {
  lapS: 30,
  firstS: 6,
  secondS: 20,
  riseS: 0.22,
  holdEndS: 0.7,
  offS: 2.2,
  peakBar: 60,
  /** Peak of the second zone as a share of the first. */
  second: 0.6,
} as const;

/** Pressure of a zone without errors, as a share of its peak. */
export function shareAt(timeS: number): number {
  const { riseS, holdEndS, offS } = VARIED;
  if (timeS <= 0 || timeS >= offS) return 0;
  const u = timeS / riseS;
  if (u < 1) return u ** 3 * (10 - 15 * u + 6 * u * u);
  if (timeS < holdEndS) return 1;
  return (1 - (timeS - holdEndS) / (offS - holdEndS)) ** 1.3;
}

export function variedLog(log: VariedLog): string {
  const { lapS, firstS, secondS, peakBar, second } = VARIED;
  const wheel = log.steering === false ? '' : ',steering [deg]';
  const lines = [`time_s,brake_pressure_front [bar],speed [m/s],lap${wheel}`];
  let mps = 60;
  for (let i = 0; i < log.laps * lapS * 100; i++) {
    const timeS = i / 100;
    const lap = Math.floor(timeS / lapS);
    const inLapS = timeS - lap * lapS;
    const entry = log.entryMps?.(lap) ?? 60;
    const bar =
      peakBar * (pressed(log, lap, inLapS - firstS) + second * pressed(log, lap, inLapS - secondS));
    mps = bar > 0 ? mps - 0.002 * bar : Math.min(entry, mps + 0.06);
    const angle = turned(inLapS - firstS) + turned(inLapS - secondS);
    const cells = [timeS.toFixed(2), bar.toFixed(3), mps.toFixed(3), `${lap + 1}`];
    lines.push([...cells, ...(wheel === '' ? [] : [angle.toFixed(2)])].join(','));
  }
  return `${lines.join('\n')}\n`;
}

function pressed({ timingS, rate, amount }: VariedLog, lap: number, timeS: number): number {
  const { riseS, holdEndS } = VARIED;
  const releaseS = holdEndS + timingS(lap);
  if (timeS < riseS) return amount(lap) * shareAt(timeS);
  if (timeS < releaseS) return amount(lap);
  return amount(lap) * shareAt(holdEndS + (timeS - releaseS) / rate(lap));
}

function turned(timeS: number): number {
  const share = (timeS - 1) / 2.4;
  return share > 0 && share < 1 ? 50 * (1 - Math.cos(2 * Math.PI * share)) : 0;
}
