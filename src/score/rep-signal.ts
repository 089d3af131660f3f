import { Problem } from '../problem.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import { resample } from '../trace/resample.ts';
import { type BrakingThreshold, brakingThreshold, findOnset } from './onset.ts';
import { EDGE_SAMPLES, RATE_HZ, scoringFilter } from './scoring-filter.ts';

/** Far longer than any braking zone; more is a record that was cut wrongly or timed in other units. */
const LONGEST_S = 600;

/** The brake of one record on the 1 kHz grid, before it is laid on a target. */
export interface RepSignal {
  /** Record time of grid point 0: the first sample, so that moving the whole record changes nothing. */
  readonly startS: number;
  /** As recorded. */
  readonly raw: Float64Array;
  /** As scored. */
  readonly levels: Float64Array;
  readonly threshold: BrakingThreshold;
  /** Null where the brake was never pressed. */
  readonly onset: number | null;
}

/**
 * @returns null where there are too few samples to filter.
 * @throws Problem for a record longer than ten minutes.
 */
export function repSignal(record: RepRecord): RepSignal | null {
  const times = record.brake.timeS.filter(Number.isFinite);
  const startS = times[0];
  if (startS === undefined) return null;
  const count = Math.round((endOf(record, times) - startS) * RATE_HZ) + 1;
  if (count <= EDGE_SAMPLES) return null;
  if (count > LONGEST_S * RATE_HZ) throw tooLong(count / RATE_HZ);
  const raw = resample(record.brake, startS, count, RATE_HZ);
  const levels = scoringFilter(raw);
  const threshold = brakingThreshold(levels, record.brakeStepLevel);
  return { startS, raw, levels, threshold, onset: findOnset(levels, threshold) };
}

function endOf(record: RepRecord, times: Float64Array): number {
  const last = times[times.length - 1]!;
  return Number.isFinite(record.endS) ? Math.max(record.endS, last) : last;
}

function tooLong(durationS: number): Problem {
  return new Problem(`the record lasts ${Math.round(durationS)} s, too long for one rep`, {
    next: 'Cut it to one braking zone, and check that its times are in seconds.',
  });
}
