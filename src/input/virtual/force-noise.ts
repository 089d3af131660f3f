import { gaussian, type RandomSource } from '../../drill/seeded-random.ts';

/** Leg force: bandwidth and variability by Kudzia et al., Scientific Reports 12:4935 (2022). */
const BANDWIDTH_HZ = 2;
/** Two equal poles lose 3 dB at the bandwidth together. */
const POLE_HZ = BANDWIDTH_HZ / Math.sqrt(Math.SQRT2 - 1);
const FORCE_VARIABILITY = 0.027;
/** Physiological tremor lies between 8 and 12 Hz; its size here is common practice, no source. */
const TREMOR_HZ = 9.5;
const TREMOR_SHARE = 0.002;
const SETTLED_S = 1;

/** The share by which a force differs from the one that was meant, at steps of equal length. */
export function forceNoise(random: RandomSource, stepS: number): () => number {
  const slow = slowNoise(random, stepS);
  let phase = 2 * Math.PI * random();
  return () => {
    phase += 2 * Math.PI * TREMOR_HZ * stepS;
    return FORCE_VARIABILITY * slow() + TREMOR_SHARE * Math.sin(phase);
  };
}

/**
 * Normal noise of variance 1: white noise through two equal first-order filters. Such a
 * process has variance s2 (1 + f^2) / (1 - f^2)^3 (Box and Jenkins, Time Series Analysis, AR(2) with a double root).
 */
function slowNoise(random: RandomSource, stepS: number): () => number {
  const keep = Math.exp(-2 * Math.PI * POLE_HZ * stepS);
  const drive = Math.sqrt((1 - keep ** 2) ** 3 / (1 + keep ** 2));
  let first = 0;
  let second = 0;
  const step = () => {
    first = keep * first + drive * gaussian(random);
    second = keep * second + first;
    return second;
  };
  for (let settleS = 0; settleS < SETTLED_S; settleS += stepS) step();
  return step;
}
