import type { SessionName } from './circuit-event.ts';

/** An event file as the schema lets it through; keys and units as people write them. */
export interface EventFile {
  readonly name: string;
  readonly advice?: string;
  readonly date: string;
  readonly car?: string;
  readonly zones: readonly EventZoneFile[];
  readonly sessions: readonly EventSessionFile[];
  readonly late_call_share?: number;
  readonly brakes_stay_hot?: boolean;
}

export interface EventZoneFile {
  readonly corner: string;
  readonly car?: string;
  readonly variant?: string;
  /** Exactly one of the two; the schema sees to it. */
  readonly to_next_s?: number;
  readonly to_next_m?: number;
}

export interface EventSessionFile {
  readonly session: SessionName;
  readonly variant?: string;
  readonly late_call_share?: number;
}
