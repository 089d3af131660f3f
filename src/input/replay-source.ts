import { basename } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import { from, type Observable, Subject, share, takeUntil } from 'rxjs';
import type { DrillView } from '../drill/drill-view.ts';
import { cleanText } from './discovery/clean-text.ts';
import { type OpenRecording, openRecording } from './recording/open-recording.ts';
import type { ReportBatch } from './report-batch.ts';
import type { DeviceEvent, ReportSource } from './report-source.ts';
import { packReports } from './rig/pack-reports.ts';
import type { Rig } from './rig/rig.ts';
import type { RigDevice } from './rig-device.ts';

interface ReplayOptions {
  /** `recorded` waits as long as the source did, `fast` gives batches as they are consumed. */
  readonly pace: 'recorded' | 'fast';
}

/** A recording as a source, with the rig it was made on. */
interface ReplaySource extends ReportSource {
  readonly rig: Rig | null;
}

/**
 * Opens a recording. Its batches come once, with the times they were recorded with, and complete at its end; damage
 * under way is an error of `batches$` that names the line.
 * @throws Problem for a file that is not there or no recording.
 */
export async function openReplaySource(
  file: string,
  { pace }: ReplayOptions,
): Promise<ReplaySource> {
  return new RecordingReplay(cleanText(basename(file)), await openRecording(file), pace === 'fast');
}

class RecordingReplay implements ReplaySource {
  readonly label: string;
  readonly devices: readonly RigDevice[];
  readonly rig: Rig | null;
  readonly simulated: boolean;
  readonly batches$: Observable<ReportBatch>;
  readonly events$: Observable<DeviceEvent>;
  readonly #recording: OpenRecording;
  readonly #events$: Subject<DeviceEvent> = new Subject();
  readonly #closed$: Subject<void> = new Subject();
  readonly #abort: AbortController = new AbortController();

  constructor(name: string, recording: OpenRecording, fast: boolean) {
    this.label = `replay of ${name}`;
    this.devices = recording.header.devices;
    this.rig = recording.header.rig;
    this.simulated = fast;
    this.events$ = this.#events$.asObservable();
    this.batches$ = from(this.#replay(fast)).pipe(takeUntil(this.#closed$), share());
    this.#recording = recording;
  }

  see(_view: DrillView): void {}

  async close(): Promise<void> {
    this.#abort.abort();
    this.#closed$.next();
    this.#events$.complete();
    await this.#recording.close();
  }

  async *#replay(fast: boolean): AsyncGenerator<ReportBatch, void, void> {
    const pacer = fast ? null : new Pacer(this.#abort.signal);
    for await (const entry of this.#recording.entries) {
      if (this.#abort.signal.aborted) return;
      await pacer?.until(entry.kind === 'event' ? entry.event.atUs : entry.untilUs);
      if (entry.kind === 'event') this.#events$.next(entry.event);
      else yield packReports(entry.reports, entry.untilUs, entry.dropped);
    }
  }
}

/** Waits until as much time has passed since the first call as the recording's clock says. */
class Pacer {
  readonly #signal: AbortSignal;
  #originMs: number | null = null;

  constructor(signal: AbortSignal) {
    this.#signal = signal;
  }

  async until(timeUs: number): Promise<void> {
    const timeMs = timeUs / 1000;
    this.#originMs ??= performance.now() - timeMs;
    const waitMs = this.#originMs + timeMs - performance.now();
    if (waitMs <= 0) return;
    // An aborted wait ends the replay, it is not an error.
    await setTimeout(waitMs, undefined, { signal: this.#signal }).catch(() => undefined);
  }
}
