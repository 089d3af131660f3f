import {
  connect,
  ignoreElements,
  lastValueFrom,
  map,
  merge,
  type Observable,
  sampleTime,
  takeWhile,
  tap,
} from 'rxjs';
import type { ReportSource } from '../../report-source.ts';
import type { Rig } from '../rig.ts';
import { RigMonitor, type RigReading } from './rig-monitor.ts';

interface WatchOptions {
  /** Seconds of the source's clock to watch for. */
  readonly seconds: number;
  /** The first and the last of them, in which nothing is to be touched. */
  readonly restS: number;
  /** Called a few times a second with how things stand. */
  readonly onLive: (reading: RigReading) => void;
}

const LIVE_MS = 200;

/**
 * Watches a source until the time is over or it ends, and closes it.
 * @throws Problem where a calibration cannot be used or the source fails.
 */
export async function watchRig(
  source: ReportSource,
  rig: Rig | null,
  { seconds, restS, onLive }: WatchOptions,
): Promise<RigReading> {
  try {
    const monitor = new RigMonitor(rig, source.devices, {
      restS,
      endS: seconds - restS,
    });
    const events = source.events$.subscribe((event) => monitor.deviceEvent(event));
    const watched$ = monitored(source, monitor, seconds).pipe(
      connect((readings$) =>
        merge(
          readings$,
          readings$.pipe(
            sampleTime(LIVE_MS),
            tap(() => onLive(monitor.read())),
            ignoreElements(),
          ),
        ),
      ),
    );
    await lastValueFrom(watched$, { defaultValue: null });
    events.unsubscribe();
    return monitor.read();
  } finally {
    await source.close();
  }
}

/** Seconds since the first batch, after each batch. */
function monitored(source: ReportSource, monitor: RigMonitor, seconds: number): Observable<number> {
  let startUs: number | null = null;
  return source.batches$.pipe(
    tap((batch) => monitor.batch(batch)),
    map(({ untilUs }) => {
      startUs ??= untilUs;
      return (untilUs - startUs) / 1e6;
    }),
    takeWhile((elapsedS) => elapsedS < seconds, true),
  );
}
