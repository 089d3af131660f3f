/** A made-up car on a straight with braking zones, sampled by a logger: nothing here comes from what is tested. */
export interface DrivenRow {
  readonly timeS: number;
  readonly bar: number;
  readonly mps: number;
  readonly lap: number;
  readonly distanceM: number;
  readonly ax: number;
}

export interface Drive {
  readonly rateHz?: number;
  readonly zones?: number;
  readonly noiseBar?: number;
  readonly lagS?: number;
}

/** A zone begins every 10 s at 5 s; it rises in 0.2 s to 60 bar, holds to 1 s and is off at 2.5 s. */
export const ZONE = {
  firstS: 5,
  everyS: 10,
  riseS: 0.2,
  holdS: 1,
  offS: 2.5,
  peakBar: 60,
} as const;

export function pressureBar(timeS: number): number {
  const t = (timeS - ZONE.firstS + ZONE.everyS) % ZONE.everyS;
  if (timeS < ZONE.firstS || t > ZONE.offS) return 0;
  if (t < ZONE.riseS) return (ZONE.peakBar * t) / ZONE.riseS;
  if (t < ZONE.holdS) return ZONE.peakBar;
  return (ZONE.peakBar * (ZONE.offS - t)) / (ZONE.offS - ZONE.holdS);
}

/** Deterministic noise, uniform in -0.5..0.5 (Park and Miller's generator). */
function noise(): () => number {
  let state = 20261125;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647 - 0.5;
  };
}

export function drive({
  rateHz = 100,
  zones = 3,
  noiseBar = 0,
  lagS = 0,
}: Drive = {}): DrivenRow[] {
  const random = noise();
  const rows: DrivenRow[] = [];
  let mps = 60;
  let distanceM = 0;
  const steps = 10;
  for (let i = 0; i < (zones * ZONE.everyS + 3) * rateHz; i++) {
    const timeS = i / rateHz;
    const bar = Math.max(0, pressureBar(timeS - lagS) + noiseBar * random());
    const pressed = pressureBar(timeS);
    const ax = pressed > 0 ? -0.2 * pressed : mps < 60 ? 6 : 0;
    rows.push({ timeS, bar, mps, lap: 1 + Math.floor(timeS / ZONE.everyS), distanceM, ax });
    for (let k = 0; k < steps; k++) {
      const p = pressureBar(timeS + k / steps / rateHz);
      mps += (p > 0 ? -0.2 * p : mps < 60 ? 6 : 0) / steps / rateHz;
      distanceM += mps / steps / rateHz;
    }
  }
  return rows;
}

/** The plain way to write it. */
export function csvOf(rows: readonly DrivenRow[]): string {
  const lines = rows.map(
    ({ timeS, bar, mps, lap, ax }) =>
      `${timeS.toFixed(3)},${bar.toFixed(2)},${mps.toFixed(3)},${lap},${ax.toFixed(2)}`,
  );
  return `time_s,brake_pressure_front [bar],speed [m/s],lap,ax [m/s^2]\n${lines.join('\n')}\n`;
}
