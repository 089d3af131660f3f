import type { DeviceEvent } from '../report-source.ts';
import type { LooseReport } from '../rig/pack-reports.ts';
import type { Rig } from '../rig/rig.ts';
import type { RigDevice } from '../rig-device.ts';

/** First line of a recording: what the reports came from. */
export interface RecordingHeader {
  /** The source's own label. */
  readonly label: string;
  readonly devices: readonly RigDevice[];
  /** Assignment and calibration at the time; null where none was known. The reports are raw, so another fits as well. */
  readonly rig: Rig | null;
}

/** What the source gave in one slice of time. */
interface RecordedBatch {
  readonly kind: 'batch';
  readonly untilUs: number;
  readonly dropped: number;
  readonly reports: readonly LooseReport[];
}

interface RecordedEvent {
  readonly kind: 'event';
  readonly event: DeviceEvent;
}

/** One line after the header. */
export type RecordingEntry = RecordedBatch | RecordedEvent;
