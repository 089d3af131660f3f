import { setImmediate } from 'node:timers/promises';
import type { ReportBatch } from '../report-batch.ts';
import { type Clock, WALL_CLOCK } from './clock.ts';
import { STEP_US, type VirtualReports } from './virtual-reports.ts';

/** `real` keeps to the clock; `simulated` gives batches as fast as they are consumed, from time 0 on. */
export type Pace = 'real' | 'simulated';

/** Reports of the pedals in a batch. */
const BATCH_STEPS = 8;
const BATCH_MS = (BATCH_STEPS * STEP_US) / 1000;
/** What a stalled or sleeping machine has to make up for at most. */
const MOST_STEPS = 1000;

/** Endless batches of the virtual devices. */
export function pacedBatches(
  pace: Pace,
  reports: VirtualReports,
  clock: Clock = WALL_CLOCK,
): AsyncGenerator<ReportBatch> {
  return pace === 'simulated' ? simulated(reports) : real(reports, clock);
}

/** Lets timers, keys and signals through after every batch. */
async function* simulated(reports: VirtualReports): AsyncGenerator<ReportBatch> {
  for (let untilUs = BATCH_STEPS * STEP_US; ; untilUs += BATCH_STEPS * STEP_US) {
    yield reports.next(BATCH_STEPS, untilUs);
    await setImmediate();
  }
}

async function* real(
  reports: VirtualReports,
  { nowUs: clockUs, wait }: Clock,
): AsyncGenerator<ReportBatch> {
  let untilUs = clockUs();
  for (;;) {
    await wait(BATCH_MS);
    const nowUs = clockUs();
    const steps = Math.min(MOST_STEPS, Math.floor((nowUs - untilUs) / STEP_US));
    untilUs = steps === MOST_STEPS ? nowUs : untilUs + steps * STEP_US;
    yield reports.next(steps, untilUs);
  }
}
