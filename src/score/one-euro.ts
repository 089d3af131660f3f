/** How a One-Euro filter trades lag for calm. `beta` is per unit of the signal: per level, not per percent. */
export interface OneEuroTuning {
  /** Cutoff at rest. */
  readonly minCutoffHz: number;
  /** Hertz of cutoff per unit per second of speed. */
  readonly beta: number;
  readonly speedCutoffHz: number;
}

/** For levels 0..1: about 4 ms of lag on a release of 80 % per second. */
const DISPLAY_TUNING: OneEuroTuning = { minCutoffHz: 5, beta: 10, speedCutoffHz: 1 };

/** Where the filter stands; a value, so that it can be folded. */
export interface OneEuroState {
  readonly timeS: number;
  readonly rateHz: number;
  readonly value: number;
  readonly speed: number;
}

/**
 * Next state of the One-Euro filter (Casiez, Roussel and Vogel, CHI 2012, doi 10.1145/2207676.2208639): a first-order
 * low-pass whose cutoff rises with the filtered speed. For the display only; it lags, so nothing is scored with it.
 *
 * @param state null before the first sample, which passes through.
 * @param rateHz rate to assume until two time stamps differ; equal or falling stamps keep the last rate.
 */
export function oneEuro(
  state: OneEuroState | null,
  value: number,
  timeS: number,
  tuning: OneEuroTuning = DISPLAY_TUNING,
  rateHz = 1000,
): OneEuroState {
  if (state === null) return { timeS, rateHz, value, speed: 0 };
  const rate = timeS > state.timeS ? 1 / (timeS - state.timeS) : state.rateHz;
  const rawSpeed = (value - state.value) * rate;
  const speed = blend(state.speed, rawSpeed, tuning.speedCutoffHz, rate);
  const cutoffHz = tuning.minCutoffHz + tuning.beta * Math.abs(speed);
  return { timeS, rateHz: rate, value: blend(state.value, value, cutoffHz, rate), speed };
}

function blend(before: number, now: number, cutoffHz: number, rateHz: number): number {
  const share = 1 / (1 + rateHz / (2 * Math.PI * cutoffHz));
  return before + share * (now - before);
}
