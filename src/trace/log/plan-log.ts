import type { ProfileProblem } from '../../profile/profile-problem.ts';
import { type ChosenColumn, chooseColumns, listed } from './choose-columns.ts';
import { type ClockSource, LogClock } from './log-clock.ts';
import { findDialect, type LogDialect } from './log-dialect.ts';
import { LogLines } from './log-lines.ts';
import { LogRefused, type LogWish } from './log-settings.ts';
import { BRAKE_ROLES, type BrakeRole } from './logged-zone.ts';
import { Notices } from './notices.ts';
import { RowReader } from './row-reader.ts';

/** How a log is to be read. */
export interface LogPlan {
  readonly dialect: LogDialect;
  readonly columns: readonly ChosenColumn[];
  readonly clock: ClockSource;
  readonly brake: BrakeRole;
  /** Typical time from row to row. */
  readonly stepS: number;
  /** Rows further apart than this leave a gap. */
  readonly gapS: number;
  /** Length of a byte order mark. */
  readonly skipBytes: number;
  readonly notices: readonly string[];
}

/** As for a device that says nothing for 50 ms; slower logs have their own step. */
const LEAST_GAP_S = 0.05;
const GAP_STEPS = 3.5;
/** A release lasts about a second: fewer than ten rows do not show its shape. */
const SLOWEST_STEP_S = 0.1;
const COARSE_STEP_S = 0.021;

/**
 * How to read a log, from its first bytes and the user's word.
 *
 * @param whole the bytes are the whole file
 * @throws LogRefused with all that stands in the way
 */
export function planLog(head: Uint8Array, whole: boolean, wish: LogWish): LogPlan {
  const skipBytes = head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf ? 3 : 0;
  if (head.includes(0))
    refuse(1, 'this is not a text file in UTF-8', 'Save the log as CSV in UTF-8.');
  const lines = new TextDecoder().decode(head.subarray(skipBytes)).split('\n');
  if (!whole) lines.pop();
  const dialect = findDialect(lines, wish);
  if ('what' in dialect) throw new LogRefused([dialect]);
  const { chosen, problems, notices } = chooseColumns(
    dialect.columns,
    wish,
    dialect.headerLine ?? 1,
  );
  if (problems.length > 0) throw new LogRefused(problems);
  const line = dialect.headerLine ?? 1;
  const brake = brakeOf(chosen, dialect, wish, line);
  const clock = clockOf(chosen, wish, line);
  const stepS = typicalStep(head.subarray(skipBytes), whole, dialect, chosen, clock);
  if (stepS > SLOWEST_STEP_S)
    refuse(
      line,
      `one row every ${stepS.toFixed(2)} s does not show a release`,
      'Log at 10 Hz at the very least, better at 100 Hz.',
    );
  return {
    dialect,
    columns: chosen,
    clock,
    brake,
    stepS,
    gapS: Math.max(LEAST_GAP_S, GAP_STEPS * stepS),
    skipBytes,
    notices: [...notices, ...remarks(dialect, chosen, brake, clock, stepS)],
  };
}

function remarks(
  { columns, headerLine }: LogDialect,
  chosen: readonly ChosenColumn[],
  brake: BrakeRole,
  clock: ClockSource,
  stepS: number,
): string[] {
  const has = (role: string): boolean => chosen.some((column) => column.role === role);
  const others = BRAKE_ROLES.filter((role) => role !== brake && has(role));
  return [
    ...(columns.at(-1)!.name === ''
      ? ['the separator at the end of the header is passed over']
      : []),
    ...(headerLine !== null && headerLine > 2
      ? [`lines before line ${headerLine} are passed over`]
      : []),
    ...(others.length > 0
      ? [`the brake is judged by ${brake}; ${others.join(' and ')} stand beside it`]
      : []),
    ...(has('speed') ? [] : ['there is no speed: a press of the standing car counts as a zone']),
    ...(clock.kind === 'distance' ? ['time is computed from distance and speed'] : []),
    ...(clock.kind === 'rate' ? ['time is counted from --rate-hz'] : []),
    ...(stepS > COARSE_STEP_S
      ? [`${Math.round(1 / stepS)} rows a second: times of key points are coarse`]
      : []),
  ];
}

function brakeOf(
  chosen: readonly ChosenColumn[],
  { columns }: LogDialect,
  wish: LogWish,
  line: number,
): BrakeRole {
  const has = (role: BrakeRole): boolean => chosen.some((column) => column.role === role);
  const order: readonly BrakeRole[] = ['brake-front', 'pedal-force', 'brake-level', 'brake-rear'];
  const brake = wish.brake ?? order.find(has);
  if (brake !== undefined && has(brake)) return brake;
  return refuse(
    line,
    wish.brake === null ? 'no column of the brake is found' : `there is no column ${wish.brake}`,
    `Name it, such as --column brake-front=#3 --unit brake-front=bar. There are ${listed(columns)}.`,
  );
}

function clockOf(chosen: readonly ChosenColumn[], { rateHz }: LogWish, line: number): ClockSource {
  const has = (role: string): boolean => chosen.some((column) => column.role === role);
  if (rateHz !== null) return { kind: 'rate', rateHz };
  if (has('time')) return { kind: 'time' };
  if (has('distance') && has('speed')) return { kind: 'distance' };
  return refuse(
    line,
    'there is neither a time nor a distance with a speed',
    'Name the column with --column time=NAME, or say how many rows a second: --rate-hz 100.',
  );
}

/** Median step between the rows of the head; a row that cannot be read is reported when its turn comes. */
function typicalStep(
  head: Uint8Array,
  whole: boolean,
  dialect: LogDialect,
  chosen: readonly ChosenColumn[],
  source: ClockSource,
): number {
  if (source.kind === 'rate') return 1 / source.rateHz;
  const reader = new RowReader(dialect, chosen, new Notices());
  const clock = new LogClock(source);
  const steps: number[] = [];
  let line = 0;
  const lines = new LogLines(
    (bytes, from, to) => {
      if (++line <= dialect.linesBefore || reader.read(bytes, from, to, line) !== true) return;
      const beforeS = clock.timeS;
      if (clock.advance(reader.values, line, 0) === null && clock.timeS > beforeS)
        steps.push(clock.timeS - beforeS);
    },
    () => refuse(line + 1, 'this line is too long', 'Give a text file with one row a line.'),
  );
  lines.push(head);
  if (whole) lines.end();
  steps.sort((a, b) => a - b);
  return (
    steps[Math.floor(steps.length / 2)] ??
    refuse(line, 'time does not advance', 'Check the column of time.')
  );
}

function refuse(line: number, what: string, next: string): never {
  const problem: ProfileProblem = { line, column: 1, what, next };
  throw new LogRefused([problem]);
}
