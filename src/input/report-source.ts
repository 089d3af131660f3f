import type { Observable } from 'rxjs';
import type { DrillView } from '../drill/drill-view.ts';
import type { ReportBatch } from './report-batch.ts';
import type { RigDevice } from './rig-device.ts';

export type DeviceEvent =
  | {
      readonly kind: 'lost';
      readonly device: number;
      readonly atUs: number;
      readonly reason: string;
    }
  | { readonly kind: 'back'; readonly device: number; readonly atUs: number };

/**
 * Where report bytes come from: hardware, a simulated driver on simulated devices, the mouse, or a recording.
 * The drill's clock is the watermark of the batches, so a simulated source may run as fast as it is consumed.
 */
export interface ReportSource {
  /** For the screen, for example `2 devices` or `virtual driver, club`. */
  readonly label: string;
  readonly devices: readonly RigDevice[];
  /** Starts when subscribed; a batch every 8 to 17 ms, empty ones included; completes when a recording ends. */
  readonly batches$: Observable<ReportBatch>;
  readonly events$: Observable<DeviceEvent>;
  /** True where time stamps are simulated and nothing waits for a wall clock. */
  readonly simulated: boolean;
  /** What the screen shows now; only a simulated driver looks at it. */
  see(view: DrillView): void;
  /** Idempotent. */
  close(): Promise<void>;
}
