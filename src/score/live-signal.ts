import type { LiveRun } from '../live/live-run.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import { resample } from '../trace/resample.ts';
import { brakingThreshold, findOnset } from './onset.ts';
import type { RepSignal } from './rep-signal.ts';
import { EDGE_SAMPLES, RATE_HZ, scoringFilter } from './scoring-filter.ts';

/**
 * The brake of a live rep on the steps of the car, from where it began to roll, so that a step of the run is a point
 * of the grid; beyond the run to the end of the record.
 *
 * @returns null where there are too few steps to filter.
 */
export function liveSignal(record: RepRecord, { columns }: LiveRun): RepSignal | null {
  const startS = columns.timeS[0];
  if (startS === undefined) return null;
  const recorded = Math.round((record.endS - startS) * RATE_HZ) + 1;
  const count = Math.max(columns.timeS.length, recorded);
  if (!(count > EDGE_SAMPLES)) return null;
  const raw = resample(record.brake, startS, count, RATE_HZ);
  const levels = scoringFilter(raw);
  const threshold = brakingThreshold(levels, record.brakeStepLevel);
  return { startS, raw, levels, threshold, onset: findOnset(levels, threshold) };
}
