import type { KeptCounts } from '../history/kept.ts';
import { Interrupted } from './interrupted.ts';
import { ProgressLine, type ProgressOutput } from './progress-line.ts';

/** What an export or import takes from the world. */
export interface Surroundings {
  readonly output: ProgressOutput;
  readonly stop: { readonly asked: boolean };
  readonly nowUtcMs: number;
}

/** Shows how far a job over reps is, and ends it when asked. */
export async function countedJob<T>(
  { reps }: Pick<KeptCounts, 'reps'>,
  { output, stop }: Pick<Surroundings, 'output' | 'stop'>,
  job: (repDone: () => void) => Promise<T>,
): Promise<T> {
  const line = new ProgressLine(output, 'reps', reps);
  let done = 0;
  try {
    return await job(() => {
      done++;
      line.show(done);
      if (stop.asked) throw new Interrupted();
    });
  } finally {
    line.end();
  }
}
