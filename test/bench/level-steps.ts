import { seededRandom } from '../../src/drill/seeded-random.ts';
import { BRAKE } from '../live/assigned-rig.ts';
import type { Line } from '../live/device-process.ts';

/** How long the foot is off, so that a rep can begin, and for how long steps follow then. */
const OFF_S = 4;
const STEPS_S = 9;
const ROUND_S = OFF_S + STEPS_S;
/** A step lasts longer than any frame, and so long that it begins anywhere within one. */
const STEP_S = { least: 0.08, more: 0.04 };
const LEAST_CHANGE = 4;
/** Between two points of a line that is a step. */
const AT_ONCE_S = 1e-6;
const SEED = 20261127;

/** A brake that is pressed in steps, each to a whole share of full scale. */
export interface LevelSteps {
  /** Brake counts over time. */
  readonly line: Line;
  readonly steps: readonly {
    /** Index into the line of the first point at the new level. */
    readonly point: number;
    readonly percent: number;
  }[];
  readonly lastS: number;
}

/** So many rounds of a rep's time each: foot off, then steps through the rep and what follows it. */
export function levelSteps(rounds: number): LevelSteps {
  const random = seededRandom(SEED);
  const line: (readonly [number, number])[] = [[0, counts(0)]];
  const steps: { point: number; percent: number }[] = [];
  let now = 0;
  const step = (atS: number, percent: number): void => {
    line.push([atS, counts(now)], [atS + AT_ONCE_S, counts(percent)]);
    steps.push({ point: line.length - 1, percent });
    now = percent;
  };
  for (let round = 0; round < rounds; round++) {
    const endS = (round + 1) * ROUND_S;
    let atS = round * ROUND_S + OFF_S;
    if (round > 0) step(round * ROUND_S, 0);
    for (; atS < endS; atS += STEP_S.least + STEP_S.more * random()) step(atS, other(now, random));
  }
  line.push([rounds * ROUND_S, counts(now)]);
  return { line, steps, lastS: rounds * ROUND_S };
}

/** 10 to 95 %, so that the foot is on the brake, and not near what it was. */
function other(before: number, random: () => number): number {
  for (;;) {
    const percent = 10 + Math.floor(86 * random());
    if (Math.abs(percent - before) >= LEAST_CHANGE) return percent;
  }
}

function counts(percent: number): number {
  return BRAKE.rest + ((BRAKE.full - BRAKE.rest) * percent) / 100;
}
