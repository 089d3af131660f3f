import type { ProfileProblem } from '../../profile/profile-problem.ts';
import { ExitKeeper } from './exit-keeper.ts';
import { LogClock } from './log-clock.ts';
import { LogLines } from './log-lines.ts';
import { ROLE } from './log-roles.ts';
import { BRAKE_SCALES, LogRefused, type LogSummary, type LogWish } from './log-settings.ts';
import type { LoggedZone } from './logged-zone.ts';
import { Notices } from './notices.ts';
import type { LogPlan } from './plan-log.ts';
import { RowReader } from './row-reader.ts';
import { SpikeMender } from './spike-mender.ts';
import { StartGate } from './start-gate.ts';
import { SteeringCheck } from './steering-check.ts';
import { steeringSign } from './steering-sign.ts';
import { ZoneFinder } from './zone-finder.ts';

/** The rows of a log whose writing is known: each is timed, mended and looked through for braking zones. */
export class LogRows {
  readonly #plan: LogPlan;
  readonly #wish: LogWish;
  readonly #notices: Notices = new Notices();
  readonly #lines: LogLines;
  readonly #reader: RowReader;
  readonly #clock: LogClock;
  readonly #gate: StartGate;
  readonly #mender: SpikeMender;
  readonly #finder: ZoneFinder;
  readonly #exits: ExitKeeper;
  readonly #steering: SteeringCheck = new SteeringCheck();
  readonly #brake: number;
  readonly #different = new Set<number>();
  #line: number = 0;
  #count: number = 0;
  #atEnd: boolean = false;

  constructor(plan: LogPlan, wish: LogWish, onZone: (zone: LoggedZone) => void) {
    this.#plan = plan;
    this.#wish = wish;
    for (const notice of plan.notices) this.#notices.add(notice, null);
    this.#lines = new LogLines(
      (bytes, from, to) => this.#onLine(bytes, from, to),
      () => refuse({ ...TOO_LONG, line: this.#line + 1 }),
    );
    this.#reader = new RowReader(plan.dialect, plan.columns, this.#notices);
    this.#clock = new LogClock(plan.clock);
    this.#brake = ROLE[plan.brake];
    const scale = BRAKE_SCALES[plan.brake];
    this.#gate = new StartGate(scale, this.#notices);
    const width = this.#reader.values.length;
    this.#mender = new SpikeMender(this.#brake, width, scale, this.#notices, (row, timeS, line) => {
      this.#finder.push(row, timeS, line);
      this.#exits.push(row, timeS);
    });
    const roles = plan.columns.map(({ role }) => role);
    this.#exits = new ExitKeeper(roles, plan.brake, scale.on, onZone);
    this.#finder = new ZoneFinder(roles, plan.brake, scale, this.#notices, (zone) =>
      this.#exits.hold(zone),
    );
  }

  push(chunk: Uint8Array): void {
    this.#lines.push(chunk);
  }

  end(): LogSummary {
    this.#atEnd = true;
    this.#lines.end();
    this.#mender.end();
    this.#endZones();
    if (this.#count === 0) refuse(NO_ROW);
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
    const brake = values[this.#brake]!;
    const judged = this.#gate.judge(brake, this.#line);
    if (typeof judged !== 'string') refuse(judged);
    this.#count++;
    if (judged === 'pass') return;
    if (this.#different.size < 3) this.#different.add(brake);
    this.#mender.release(values, this.#clock.timeS);
    if (this.#clock.restarted) this.#restart();
    else this.#noteGap();
    this.#steering.push(values);
    this.#mender.hold(values, this.#clock.timeS, this.#line);
  }

  #restart(): void {
    this.#endZones();
    this.#mender.restart();
    this.#notices.add('the clock or the distance starts again: taken as a new lap', this.#line);
  }

  #noteGap(): void {
    const lastS = this.#mender.lastS;
    if (lastS === null || this.#clock.timeS - lastS <= this.#plan.gapS) return;
    this.#finder.gap(lastS, this.#clock.timeS);
    this.#exits.end();
    this.#notices.add('rows are missing', this.#line);
  }

  #endZones(): void {
    this.#finder.end();
    this.#exits.end();
  }

  #steeringSign(): LogSummary['steeringPositive'] {
    const steering = this.#plan.columns.find(({ role }) => role === 'steering');
    if (steering === undefined) return null;
    const said = this.#wish.steeringPositive ?? (steering.defined ? 'left' : null);
    return steeringSign(said, this.#steering.positive, this.#notices);
  }
}

const NO_ROW: ProfileProblem = {
  line: 1,
  column: 1,
  what: 'no row can be used',
  next: 'Check the log: it needs rows with a time and a brake.',
};
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

function refuse(problem: ProfileProblem): never {
  throw new LogRefused([problem]);
}
