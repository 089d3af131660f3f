import { EMPTY, endWith, filter, map, merge, type Observable, tap } from 'rxjs';
import type { DrillMessage, KeyAction } from '../drill/drill-message.ts';
import type { DeviceHealth } from '../drill/drill-view.ts';
import type { NoteKey } from '../drill/note-typing.ts';
import type { ReportSource } from '../input/report-source.ts';
import type { RigDecoder } from '../input/rig/rig-decoder.ts';

/** The source has no more reports. */
export const SOURCE_ENDED = null;

/** Who is listened to while a drill waits or runs. */
export interface DriverKeys {
  readonly keys$?: Observable<KeyAction>;
  /** Keys while a note is typed: those of the views that have one. */
  readonly typed$?: Observable<NoteKey>;
}

/** All that a drill is told: keys, devices that come and go, and batches of decoded samples until the source ends. */
export function drillMessages(
  source: ReportSource,
  decoder: RigDecoder,
  { keys$ = EMPTY, typed$ = EMPTY }: DriverKeys,
): Observable<DrillMessage | typeof SOURCE_ENDED> {
  return merge(
    keys$.pipe(map((action): DrillMessage => ({ kind: 'key', action }))),
    typed$.pipe(map((key): DrillMessage => ({ kind: 'type', key }))),
    deviceMessages(source, decoder),
    batchMessages(source, decoder),
  );
}

/** How often the devices' health is read; their rates do not change faster than anyone can read. */
const BATCHES_PER_HEALTH = 32;

function batchMessages(
  source: ReportSource,
  decoder: RigDecoder,
): Observable<DrillMessage | typeof SOURCE_ENDED> {
  let health: readonly DeviceHealth[] = [];
  return source.batches$.pipe(
    map((reports, i): DrillMessage => {
      const batch = decoder.decode(reports);
      if (i % BATCHES_PER_HEALTH === 0) health = decoder.health();
      return { kind: 'batch', batch, health };
    }),
    endWith(SOURCE_ENDED),
  );
}

/** Devices that have no part in the rig may come and go as they like. */
function deviceMessages(source: ReportSource, decoder: RigDecoder): Observable<DrillMessage> {
  return source.events$.pipe(
    tap((event) => decoder.deviceEvent(event)),
    map(({ kind, device }) => {
      const name = source.devices[device]?.name ?? `device ${device + 1}`;
      return { kind: kind === 'lost' ? 'device-lost' : 'device-back', name } as const;
    }),
    filter(({ name }) => decoder.health().some((part) => part.name === name)),
  );
}
