import {
  interval,
  map,
  NEVER,
  type Observable,
  ReplaySubject,
  share,
  takeUntil,
  using,
} from 'rxjs';
import { POINTER_DEVICE, POINTER_FULL_COUNTS } from './pointer-rig.ts';
import { monotonicUs } from './reader/monotonic-us.ts';
import type { ReportBatch } from './report-batch.ts';
import type { ReportSource } from './report-source.ts';
import { type LooseReport, packReports } from './rig/pack-reports.ts';

/** Where the pointer is, as the screen tells it. */
export interface PointerHeight {
  /** 0 at the foot of the picture, 1 at its top. */
  readonly fraction: number;
}

interface PointerSourceOptions {
  /** When batches are due; every 8 ms by default. */
  readonly ticks$?: Observable<unknown>;
  /** Monotonic clock in microseconds. */
  readonly nowUs?: () => number;
}

const BATCH_MS = 8;

/**
 * The mouse's height as a pedal: every height becomes a report of `POINTER_DEVICE`, stamped on arrival, and goes
 * through the same decoder as a real pedal with `POINTER_RIG`. Reports on change, so there is no level before the
 * mouse has moved.
 */
export function openPointerSource(
  height$: Observable<PointerHeight>,
  { ticks$ = interval(BATCH_MS), nowUs = monotonicUs }: PointerSourceOptions = {},
): ReportSource {
  const closed$ = new ReplaySubject<void>(1);
  return {
    label: 'pointer',
    devices: [POINTER_DEVICE],
    batches$: pointerBatches(height$, ticks$, nowUs).pipe(takeUntil(closed$), share()),
    events$: NEVER.pipe(takeUntil(closed$)),
    simulated: false,
    see: () => undefined,
    close: async () => closed$.next(),
  };
}

/** Collects reports for as long as somebody wants the batches. */
function pointerBatches(
  height$: Observable<PointerHeight>,
  ticks$: Observable<unknown>,
  nowUs: () => number,
): Observable<ReportBatch> {
  const pending: LooseReport[] = [];
  const collect = ({ fraction }: PointerHeight): void => {
    if (Number.isNaN(fraction)) return;
    pending.push({ device: 0, timeUs: nowUs(), bytes: pointerReport(fraction) });
  };
  return using(
    () => height$.subscribe(collect),
    () => ticks$.pipe(map(() => packReports(pending.splice(0), nowUs(), 0))),
  );
}

/** Heights beyond the picture clamp to its edges. */
function pointerReport(fraction: number): Uint8Array {
  const counts = Math.round(Math.min(1, Math.max(0, fraction)) * POINTER_FULL_COUNTS);
  return Uint8Array.of(counts & 0xff, counts >>> 8);
}
