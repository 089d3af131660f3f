/** What the sessions of an event are called. */
export const SESSIONS = ['out-lap', 'practice', 'qualifying', 'race'] as const;
export type SessionName = (typeof SESSIONS)[number];

/** How the circuit is driven in one session. */
export interface EventSession {
  readonly session: SessionName;
  /** Of the corner sheets of all zones that name none themselves; null for each sheet's first. */
  readonly variant: string | null;
  /** Share of reps with a late call, 0..1. */
  readonly lateCallShare: number;
}

/** Road from the slowest point of a zone to the brake point of the next, as the file has it. */
type ZoneGap =
  | { readonly kind: 'seconds'; readonly gapS: number }
  | { readonly kind: 'metres'; readonly gapM: number };

/** One braking zone of the lap. Names are ids or paths of files. */
export interface EventZone {
  readonly corner: string;
  readonly car: string;
  /** Driven in every session; null for the session's. */
  readonly variant: string | null;
  readonly toNext: ZoneGap;
}

/** A day at a circuit that is prepared for: its braking zones in lap order, and how they are driven when. */
export interface CircuitEvent {
  /** File name without its ending. */
  readonly id: string;
  readonly name: string;
  readonly advice: string | null;
  /** Local date of its first day, as `2027-04-10`. */
  readonly date: string;
  /** In lap order; at least two. The last leads to the first. */
  readonly zones: readonly EventZone[];
  /** At least one that is no out-lap. */
  readonly sessions: readonly EventSession[];
  /** The brakes keep their heat from zone to zone; else each rep begins at the car's start temperatures. */
  readonly brakesStayHot: boolean;
}
