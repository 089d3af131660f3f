import { type LogRole, ROLE } from './log-roles.ts';
import { BRAKE_ROLES, type LoggedZone } from './logged-zone.ts';

/** From the end of a zone on: long enough for the slowest hairpin to be left. */
const LONGEST_S = 6;
/** Nothing here is quicker than a car turns: rows closer than this to the last one kept are passed over. */
const SPARSE_S = 0.038;
const NOT_KEPT: ReadonlySet<LogRole> = new Set<LogRole>(['time', 'lap', ...BRAKE_ROLES]);

/**
 * Holds each zone back until the way out of its corner was logged: up to the next brake, a gap, or six seconds, at 25 Hz
 * or the log's own rate.
 */
export class ExitKeeper {
  readonly #brake: number;
  readonly #on: number;
  readonly #roles: readonly LogRole[];
  readonly #places: readonly number[];
  readonly #onZone: (zone: LoggedZone) => void;
  #zone: LoggedZone | null = null;
  #endS: number = 0;
  #lastS: number = Number.NEGATIVE_INFINITY;
  #timeS: number[] = [];
  #columns: number[][] = [];

  /** @param on from where the brake is pressed, in its kept unit */
  constructor(
    roles: readonly LogRole[],
    brake: LogRole,
    on: number,
    onZone: (zone: LoggedZone) => void,
  ) {
    this.#roles = roles.filter((role) => !NOT_KEPT.has(role));
    this.#places = this.#roles.map((role) => ROLE[role]);
    this.#brake = ROLE[brake];
    this.#on = on;
    this.#onZone = onZone;
  }

  /** A zone that has just ended; the one before it ends with it. */
  hold(zone: LoggedZone): void {
    this.end();
    this.#zone = zone;
    this.#endS = zone.startS + zone.samples.get('time')!.at(-1)!;
    this.#lastS = Number.NEGATIVE_INFINITY;
    this.#timeS = [];
    this.#columns = this.#roles.map(() => []);
  }

  /** @param values a row by role; copied */
  push(values: Float64Array, timeS: number): void {
    if (this.#zone === null || timeS <= this.#endS) return;
    if (values[this.#brake]! > this.#on || timeS > this.#endS + LONGEST_S) this.end();
    else if (timeS - this.#lastS >= SPARSE_S) this.#append(values, timeS);
  }

  /** Nothing more belongs to what is held. */
  end(): void {
    const zone = this.#zone;
    this.#zone = null;
    if (zone !== null) this.#onZone({ ...zone, after: this.#after() });
  }

  #append(values: Float64Array, timeS: number): void {
    this.#lastS = timeS;
    this.#timeS.push(timeS - this.#zone!.startS);
    for (let i = 0; i < this.#places.length; i++) this.#columns[i]!.push(values[this.#places[i]!]!);
  }

  #after(): LoggedZone['after'] {
    if (this.#timeS.length === 0) return null;
    const columns = this.#roles.map(
      (role, i) => [role, Float64Array.from(this.#columns[i]!)] as const,
    );
    return new Map([['time', Float64Array.from(this.#timeS)], ...columns]);
  }
}
