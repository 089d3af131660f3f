import type { ProfileProblem } from '../../profile/profile-problem.ts';
import { ExitKeeper } from './exit-keeper.ts';
import { LogClock } from './log-clock.ts';
import { joined, LogLines } from './log-lines.ts';
import { ROLE } from './log-roles.ts';
import { BRAKE_SCALES, LogRefused, type LogSummary, type LogWish } from './log-settings.ts';
import type { LoggedZone } from './logged-zone.ts';
import { isSpike, StartGate } from './mender.ts';
import { Notices } from './notices.ts';
import { type LogPlan, planLog } from './plan-log.ts';
import { RowReader } from './row-reader.ts';
import { SteeringCheck } from './steering-check.ts';
import { ZoneFinder } from './zone-finder.ts';

/** What the writing of the file is judged by, whatever the size of the chunks. */
const HEAD_BYTES = 65_536;

/**
 * Reads a logged CSV file in chunks of bytes and hands out its braking zones as it finds them. Any split of the bytes
 * gives the same result. Holds the first 64 KiB, one line and one zone, never the file.
 *
 * `push` and `end` throw `LogRefused` with line and column of what cannot be used; zones handed out before are void
 * then.
 */
export class LogReader {
  readonly #wish: LogWish;
  readonly #onZone: (zone: LoggedZone) => void;
  #head: Uint8Array = new Uint8Array(0);
  #rows: LogRows | null = null;

  constructor(wish: LogWish, onZone: (zone: LoggedZone) => void) {
    this.#wish = wish;
    this.#onZone = onZone;
  }

  push(chunk: Uint8Array): void {
    if (this.#rows === null) this.#gather(chunk);
    else this.#rows.push(chunk);
  }

  end(): LogSummary {
    if (this.#rows === null) this.#open();
    return this.#rows!.end();
  }

  #gather(chunk: Uint8Array): void {
    this.#head = joined(this.#head, chunk);
    if (this.#head.length > HEAD_BYTES) this.#open();
  }

  #open(): void {
    const whole = this.#head.length <= HEAD_BYTES;
    const plan = planLog(this.#head.subarray(0, HEAD_BYTES), whole, this.#wish);
    this.#rows = new LogRows(plan, this.#wish, this.#onZone);
    this.#rows.push(this.#head.subarray(plan.skipBytes));
    this.#head = new Uint8Array(0);
  }
}

/** The rows of a log whose writing is known. */
class LogRows {
  readonly #plan: LogPlan;
  readonly #wish: LogWish;
  readonly #notices: Notices;
  readonly #lines: LogLines;
  readonly #reader: RowReader;
  readonly #clock: LogClock;
  readonly #gate: StartGate;
  readonly #finder: ZoneFinder;
  readonly #exits: ExitKeeper;
  readonly #steering: SteeringCheck = new SteeringCheck();
  readonly #brake: number;
  readonly #different = new Set<number>();
  /** The row before, waiting for its right neighbour. */
  readonly #waiting: Float64Array;
  #waitingS: number = 0;
  #waitingLine: number = 0;
  #isWaiting: boolean = false;
  /** Brake of the row before that one, and its time. */
  #before: number = Number.NaN;
  #beforeS: number = 0;
  #line: number = 0;
  #count: number = 0;
  #atEnd: boolean = false;

  constructor(plan: LogPlan, wish: LogWish, onZone: (zone: LoggedZone) => void) {
    this.#plan = plan;
    this.#wish = wish;
    this.#notices = new Notices();
    for (const notice of plan.notices) this.#notices.add(notice, null);
    this.#reader = new RowReader(plan.dialect, plan.columns, this.#notices);
    this.#waiting = new Float64Array(this.#reader.values.length);
    this.#clock = new LogClock(plan.clock);
    this.#gate = new StartGate(BRAKE_SCALES[plan.brake], this.#notices);
    this.#brake = ROLE[plan.brake];
    const roles = plan.columns.map(({ role }) => role);
    const scale = BRAKE_SCALES[plan.brake];
    this.#exits = new ExitKeeper(roles, plan.brake, scale.on, onZone);
    this.#finder = new ZoneFinder(roles, plan.brake, scale, this.#notices, (zone) =>
      this.#exits.hold(zone),
    );
    this.#lines = new LogLines(
      (bytes, from, to) => this.#onLine(bytes, from, to),
      () => refuse({ ...TOO_LONG, line: this.#line + 1 }),
    );
  }

  push(chunk: Uint8Array): void {
    this.#lines.push(chunk);
  }

  end(): LogSummary {
    this.#atEnd = true;
    this.#lines.end();
    this.#release();
    this.#finder.end();
    this.#exits.end();
    if (this.#count === 0) refuse({ line: 1, column: 1, what: 'no row can be used', next: CHECK });
    if (this.#different.size <= 2) refuse(ON_OFF);
    const steeringPositive = this.#steeringSign();
    return {
      rows: this.#count,
      zones: this.#finder.found,
      durationS: this.#clock.timeS,
      stepS: this.#plan.stepS,
      brake: this.#plan.brake,
      columns: this.#plan.columns,
      steeringPositive,
      notices: this.#notices.list(),
    };
  }

  #onLine(bytes: Uint8Array, from: number, to: number): void {
    if (++this.#line <= this.#plan.dialect.linesBefore) return;
    const row = this.#reader.read(bytes, from, to, this.#line);
    if (row === false) return;
    if (row === true) this.#row(this.#reader.values);
    else this.#unreadable(row);
  }

  /** A log that was still being written ends within a row. */
  #unreadable(problem: ProfileProblem): void {
    if (!this.#atEnd) refuse(problem);
    this.#notices.add('the last row is cut off and left out', this.#line);
  }

  #row(values: Float64Array): void {
    const late = this.#clock.advance(values, this.#line, this.#plan.stepS);
    if (late === null) this.#timed(values);
    else this.#unreadable(late);
  }

  #timed(values: Float64Array): void {
    const judged = this.#gate.judge(values[this.#brake]!, this.#line);
    if (typeof judged !== 'string') refuse(judged);
    this.#count++;
    if (judged === 'pass') return;
    if (this.#different.size < 3) this.#different.add(values[this.#brake]!);
    this.#mend(values[this.#brake]!);
    this.#release();
    if (this.#clock.restarted) this.#restart();
    else if (this.#isGap()) this.#gap();
    this.#keep(values);
  }

  #keep(values: Float64Array): void {
    this.#steering.push(values);
    this.#waiting.set(values);
    this.#waitingS = this.#clock.timeS;
    this.#waitingLine = this.#line;
    this.#isWaiting = true;
  }

  #mend(after: number): void {
    const middle = this.#waiting[this.#brake]!;
    const scale = BRAKE_SCALES[this.#plan.brake];
    const spanS = this.#clock.timeS - this.#beforeS;
    if (!this.#isWaiting || !isSpike(this.#before, middle, after, spanS, scale)) return;
    this.#waiting[this.#brake] = (this.#before + after) / 2;
    this.#notices.add(
      'a single sample of the brake stood far off: the mean of its neighbours is taken',
      this.#waitingLine,
    );
  }

  /** Hands the waiting row on. */
  #release(): void {
    if (!this.#isWaiting) return;
    this.#finder.push(this.#waiting, this.#waitingS, this.#waitingLine);
    this.#exits.push(this.#waiting, this.#waitingS);
    this.#before = this.#waiting[this.#brake]!;
    this.#beforeS = this.#waitingS;
  }

  #restart(): void {
    this.#finder.end();
    this.#exits.end();
    this.#before = Number.NaN;
    this.#notices.add('the clock or the distance starts again: taken as a new lap', this.#line);
  }

  #isGap(): boolean {
    return this.#isWaiting && this.#clock.timeS - this.#waitingS > this.#plan.gapS;
  }

  #gap(): void {
    this.#finder.gap(this.#waitingS, this.#clock.timeS);
    this.#exits.end();
    this.#notices.add('rows are missing', this.#line);
  }

  #steeringSign(): 'left' | 'right' | null {
    const steering = this.#plan.columns.find(({ role }) => role === 'steering');
    if (steering === undefined) return null;
    const said = this.#wish.steeringPositive ?? (steering.defined ? 'left' : null);
    const seen = this.#steering.positive;
    if (said !== null && seen !== null && said !== seen) refuse(contradicted(said, seen));
    if (said === null) this.#notices.add(seen === null ? NO_SIGN : seenSign(seen), null);
    return said ?? seen;
  }
}

const CHECK = 'Check the log: it needs rows with a time and a brake.';
const NO_SIGN =
  'steering is left out: its sign is not known. Say which way is positive with --steering-positive left or right';
const ON_OFF: ProfileProblem = {
  line: 1,
  column: 1,
  what: 'the brake only has two values, so there is no release to see',
  next: 'Choose a pressure, a force or a position with --column.',
};
const TOO_LONG = {
  column: 1,
  what: 'this line is longer than 64 KiB',
  next: 'Give a text file with one row a line.',
};

function seenSign(seen: string): string {
  return `steering is taken as positive to the ${seen}, by lateral acceleration or yaw rate (positive to the left)`;
}

function contradicted(said: string, seen: string): ProfileProblem {
  return {
    line: 1,
    column: 1,
    what: `steering is said to be positive to the ${said}, but the car turns as if it were to the ${seen}`,
    next: 'Check --steering-positive, or the sign of lateral acceleration and yaw rate.',
  };
}

function refuse(problem: ProfileProblem): never {
  throw new LogRefused([problem]);
}
