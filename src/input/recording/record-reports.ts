import { createWriteStream, type WriteStream } from 'node:fs';
import { open } from 'node:fs/promises';
import { share, tap } from 'rxjs';
import type { DrillView } from '../../drill/drill-view.ts';
import { Problem } from '../../problem.ts';
import type { ReportSource } from '../report-source.ts';
import type { Rig } from '../rig/rig.ts';
import { Recorder } from './recorder.ts';
import { batchLine, eventLine, headerLine } from './recording-lines.ts';

/**
 * The same source with all that it gives written to a new file. Closing it flushes the file. Where the disk fails
 * under way the source goes on and `close` rejects with the Problem.
 * @param rig Kept beside the raw reports, so that a replay knows what they mean.
 * @throws Problem where the file is there already or cannot be made.
 */
export async function recordReports(
  source: ReportSource,
  file: string,
  rig: Rig | null,
): Promise<ReportSource> {
  const recorder = new Recorder(file, await newFile(file));
  recorder.write(headerLine({ label: source.label, devices: source.devices, rig }));
  const events = source.events$.subscribe((event) => recorder.write(eventLine(event)));
  return {
    label: source.label,
    devices: source.devices,
    simulated: source.simulated,
    batches$: source.batches$.pipe(
      tap((batch) => recorder.write(batchLine(batch))),
      share(),
    ),
    events$: source.events$,
    see: (view: DrillView) => source.see(view),
    close: async () => {
      await source.close();
      events.unsubscribe();
      await recorder.close();
    },
  };
}

/** Never overwrites: a recording cannot be made again. */
async function newFile(file: string): Promise<WriteStream> {
  try {
    const handle = await open(file, 'wx', 0o600);
    return createWriteStream(file, { fd: handle });
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    throw new Problem(code === 'EEXIST' ? 'the file is there already' : message, {
      where: file,
      next: 'Give the recording a new name in a folder you may write.',
    });
  }
}
