import { columnOf } from '../column-of.ts';
import type { Gap } from '../gap.ts';
import { LOG_ROLES, type LogRole, ROLE } from './log-roles.ts';
import type { LoggedZone } from './logged-zone.ts';
import type { Notices } from './notices.ts';
import { slows } from './slows.ts';

/** Where a press of the brake begins and ends, in the brake's kept unit. */
export interface ZoneThresholds {
  readonly on: number;
  readonly off: number;
}

/** Kept before the brake goes on; the score wants 0.3 s of rest. */
const BEFORE_S = 1;
/** Kept after the brake is off; the score looks 1.25 s beyond. */
const AFTER_S = 1.3;
/** Off for longer than this, and the next press is another zone. */
const SAME_ZONE_S = 0.5;
/** Longer presses hold a standing car. */
const LONGEST_S = 60;
const FEWEST_ROWS = 10;
const WIDTH = LOG_ROLES.length + 1;
const TIME = LOG_ROLES.length;

/**
 * Finds braking zones in rows that arrive one by one, by hysteresis on the brake, and keeps those in which the car
 * slows. Holds no more than one zone and its margins.
 */
export class ZoneFinder {
  readonly #brake: number;
  readonly #roles: readonly LogRole[];
  readonly #thresholds: ZoneThresholds;
  readonly #notices: Notices;
  readonly #onZone: (zone: LoggedZone) => void;
  #rows: Float64Array = new Float64Array(WIDTH * 4096);
  #count: number = 0;
  #zones: number = 0;
  /** Null while no zone is being gathered. */
  #onS: number | null = null;
  #onLine: number = 0;
  #onLap: number = Number.NaN;
  /** When the brake went off within the zone. */
  #offS: number | null = null;
  /** A press that is too long is passed over until the brake is off. */
  #held: boolean = false;
  #gaps: Gap[] = [];

  constructor(
    roles: readonly LogRole[],
    brake: LogRole,
    thresholds: ZoneThresholds,
    notices: Notices,
    onZone: (zone: LoggedZone) => void,
  ) {
    this.#roles = roles;
    this.#brake = ROLE[brake];
    this.#thresholds = thresholds;
    this.#notices = notices;
    this.#onZone = onZone;
  }

  /** @param values a row by role; copied */
  push(values: Float64Array, timeS: number, line: number): void {
    const brake = values[this.#brake]!;
    if (this.#onS === null) this.#wait(brake, timeS, line, values[ROLE.lap]!);
    else this.#follow(brake, timeS, line, values[ROLE.lap]!);
    this.#append(values, timeS);
  }

  /** Rows are missing between the last one and the next. */
  gap(fromS: number, toS: number): void {
    if (this.#onS === null) this.#count = 0;
    else this.#gaps.push({ fromS: fromS - this.#onS, toS: toS - this.#onS });
  }

  /** What was gathered ends here: the end of the log, or a clock that starts again. */
  end(): void {
    if (this.#onS !== null) this.#finish();
    this.#count = 0;
  }

  get found(): number {
    return this.#zones;
  }

  #wait(brake: number, timeS: number, line: number, lap: number): void {
    if (this.#held) this.#held = brake > this.#thresholds.off;
    else if (brake > this.#thresholds.on) this.#start(timeS, line, lap);
    else if (this.#count > 0 && timeS - this.#timeOf(0) > 2 * BEFORE_S)
      this.#keepFrom(timeS - BEFORE_S);
  }

  #start(timeS: number, line: number, lap: number): void {
    this.#keepFrom(timeS - BEFORE_S);
    this.#onS = timeS;
    this.#onLine = line;
    this.#onLap = lap;
    this.#offS = null;
    this.#gaps = [];
  }

  #follow(brake: number, timeS: number, line: number, lap: number): void {
    const { on, off } = this.#thresholds;
    if (timeS - this.#onS! > LONGEST_S) this.#passOver(line);
    else if (this.#offS === null) this.#offS = brake < off ? timeS : null;
    else if (brake > on) this.#again(timeS, line, lap);
    else if (timeS - this.#offS > AFTER_S) this.#finish();
  }

  /** On again soon is the same zone, pumped; later it is the next. */
  #again(timeS: number, line: number, lap: number): void {
    const offS = this.#offS!;
    if (timeS - offS <= SAME_ZONE_S) this.#offS = null;
    else {
      this.#finish();
      this.#keepFrom(offS);
      this.#start(timeS, line, lap);
    }
  }

  #passOver(line: number): void {
    this.#notices.add(`brake held for more than ${LONGEST_S} s: no zone`, line);
    this.#onS = null;
    this.#held = true;
    this.#count = 0;
  }

  #finish(): void {
    const zone = this.#zone();
    const lastS = this.#timeOf(this.#count - 1);
    if (this.#count < FEWEST_ROWS) this.#notices.add('a press of few rows is no zone', zone.line);
    else if (!slows(zone.samples))
      this.#notices.add('brake on without slowing: no zone', zone.line);
    else {
      this.#zones++;
      this.#onZone(zone);
    }
    this.#onS = null;
    this.#keepFrom(Math.max(this.#offS ?? lastS, lastS - BEFORE_S));
  }

  #zone(): LoggedZone {
    const column = (place: number, shift: number): Float64Array =>
      columnOf(this.#count, (i) => this.#rows[i * WIDTH + place]! - shift);
    return {
      number: this.#zones + 1,
      lap: Number.isNaN(this.#onLap) ? null : this.#onLap,
      line: this.#onLine,
      startS: this.#onS!,
      gaps: this.#gaps,
      samples: new Map([
        ['time', column(TIME, this.#onS!)],
        ...this.#roles
          .filter((role) => role !== 'time')
          .map((role) => [role, column(ROLE[role], 0)] as const),
      ]),
      after: null,
    };
  }

  #append(values: Float64Array, timeS: number): void {
    if ((this.#count + 1) * WIDTH > this.#rows.length) {
      const more = new Float64Array(2 * this.#rows.length);
      more.set(this.#rows);
      this.#rows = more;
    }
    const at = this.#count++ * WIDTH;
    this.#rows.set(values, at);
    this.#rows[at + TIME] = timeS;
  }

  #timeOf(row: number): number {
    return this.#rows[row * WIDTH + TIME]!;
  }

  #keepFrom(timeS: number): void {
    let first = 0;
    while (first < this.#count && this.#timeOf(first) < timeS) first++;
    this.#rows.copyWithin(0, first * WIDTH, this.#count * WIDTH);
    this.#count -= first;
  }
}
