/** An instant with the place it was recorded in, so that days and weeks mean the driver's own. */
export interface ZonedInstant {
  /** UTC milliseconds since the epoch. */
  readonly utcMs: number;
  /** IANA zone, for example `Europe/Berlin`. */
  readonly zone: string;
  /** Offset from UTC in minutes at that instant, east positive. */
  readonly offsetMin: number;
}
