import type { ProfileProblem } from '../../profile/profile-problem.ts';
import { ROLE } from './log-roles.ts';

/** What the time of a row is taken from. */
export type ClockSource =
  | { readonly kind: 'time' }
  | { readonly kind: 'distance' }
  | { readonly kind: 'rate'; readonly rateHz: number };

/** Below this speed a step of distance says nothing about time. */
const LEAST_SPEED_MPS = 0.5;
/** A clock that falls back to its first second counts each lap anew. */
const RESTART_S = 1;

/** Seconds of each row from the first one; where the log's own clock starts again, they run on. */
export class LogClock {
  /** Seconds of the last row. */
  timeS: number = 0;
  /** The last row began a new count: the time between it and the row before is not known. */
  restarted: boolean = false;
  readonly #source: ClockSource;
  #first: number | null = null;
  #last: number = 0;
  #offset: number = 0;

  constructor(source: ClockSource) {
    this.#source = source;
  }

  /** Takes the next row. @returns a problem where its time cannot be right */
  advance(values: Float64Array, line: number, typicalS: number): ProfileProblem | null {
    this.restarted = false;
    if (this.#source.kind === 'rate') return this.#count(this.#source.rateHz);
    const axis = values[ROLE[this.#source.kind]]!;
    if (!Number.isFinite(axis)) return problem(line, `no ${this.#source.kind} in this row`, MEND);
    if (this.#first === null) this.#first = axis;
    else if (axis < this.#last) {
      const back = this.#restart(axis, line, typicalS);
      if (back !== null) return back;
    } else if (this.#source.kind === 'distance') this.timeS += stepS(axis - this.#last, values);
    if (this.#source.kind === 'time') this.timeS = axis - this.#first + this.#offset;
    this.#last = axis;
    return null;
  }

  #count(rateHz: number): null {
    if (this.#first === null) this.#first = 0;
    else this.timeS = ++this.#last / rateHz;
    return null;
  }

  #restart(axis: number, line: number, typicalS: number): ProfileProblem | null {
    const kind = this.#source.kind;
    const near = kind === 'time' ? RESTART_S : 100;
    if (axis > Math.min(near, this.#last / 2) + Math.min(0, this.#first!))
      return problem(line, `${kind} goes back from ${this.#last} to ${axis}`, MEND);
    this.restarted = true;
    this.timeS += typicalS;
    this.#offset = this.timeS - axis + this.#first!;
    return null;
  }
}

const MEND = 'Sort the rows, or mend or remove this one.';

function stepS(stepM: number, values: Float64Array): number {
  return stepM / Math.max(LEAST_SPEED_MPS, values[ROLE.speed]!);
}

function problem(line: number, what: string, next: string): ProfileProblem {
  return { line, column: 1, what, next };
}
