import { amplitudeSpectrum } from './spectrum.ts';

const MAX_FREQUENCY_HZ = 10;
const MAGNITUDE_FLOOR = 0.05;
/** Zero padding by 2 to this power beyond the next power of two, for a fine frequency grid. */
const PADDING = 4;

/**
 * Spectral arc length of a speed profile: minus the length of its normalised amplitude spectrum up to 10 Hz, between
 * the first and last frequency with 5 % of the largest amplitude (Balasubramanian, Melendez-Calderon, Roby-Brami and
 * Burdet, Journal of NeuroEngineering and Rehabilitation 12:112, 2015). Less negative is smoother. Only differences
 * between profiles of one length mean anything here: a sudden drop is "smoother" than a taper.
 *
 * @returns null for a profile that is zero throughout, or has nothing up to 10 Hz.
 */
export function spectralArcLength(speed: Float64Array, rateHz: number): number | null {
  const size = 2 ** (Math.ceil(Math.log2(speed.length)) + PADDING);
  const end = Math.min(Math.floor((MAX_FREQUENCY_HZ * size) / rateHz), size / 2) + 1;
  const { lowest, largest } = amplitudeSpectrum(speed, size, end);
  if (!(largest > 0)) return null;
  const normal = lowest.map((magnitude) => magnitude / largest);
  const first = normal.findIndex((magnitude) => magnitude >= MAGNITUDE_FLOOR);
  const last = normal.findLastIndex((magnitude) => magnitude >= MAGNITUDE_FLOOR);
  if (first < 0) return null;
  let length = 0;
  for (let bin = first + 1; bin <= last; bin++) {
    length += Math.hypot(1 / (last - first), normal[bin]! - normal[bin - 1]!);
  }
  return -length;
}
