/**
 * The grid on which a finished rep is kept. A record on this grid survives the history to the bit, so that the
 * live score is the score of what was stored.
 *
 * Time: 0.1 ms, so that a stamp moves by 0.05 ms at most. A USB full-speed device answers once per 1 ms frame, the
 * score looks at a 1 ms grid, and the jitter of arrival stamps is a good part of 0.1 ms: finer ticks would store
 * that noise.
 */
export const TICKS_PER_S = 10_000;

/**
 * Brake level: 2^-16. A 16-bit sensor calibrated over its whole range steps by 1/65535, which is more than one
 * quantum, so neighbouring counts stay apart; 0 and 1 are kept exactly. The rounding is 0.0008 % of full scale at
 * most.
 */
export const QUANTA_PER_BRAKE_LEVEL = 65_536;

/** Throttle and clutch: 2^-14, half a count of a 13-bit sensor. Nothing asks them for more than "above 5 %, and when". */
export const QUANTA_PER_LEVEL = 16_384;

/** Steering: 1/64 degree, one count of a 16-bit wheel with 1024 degrees from stop to stop. */
export const QUANTA_PER_DEGREE = 64;

/** Largest count of quanta: a difference to a straight line through two others still fits in 32 bits. */
const LARGEST = 2 ** 28 - 1;

/**
 * The whole number of quanta nearest to a value (halves go up).
 * @throws RangeError for NaN, infinities and what does not fit; the recorder must not produce such a value.
 */
export function toQuanta(value: number, perUnit: number): number {
  const quanta = Math.round(value * perUnit) + 0; // + 0 turns -0 into 0
  if (!(Math.abs(quanta) <= LARGEST))
    throw new RangeError(`${value} cannot be kept in steps of 1/${perUnit}`);
  return quanta;
}
