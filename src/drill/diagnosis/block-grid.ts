import { RATE_HZ } from '../../score/scoring-filter.ts';
import { targetReference } from '../../score/target-reference.ts';
import type { Target } from '../../target/target.ts';
import { columnOf } from '../../trace/column-of.ts';
import type { BrakePhase } from './brake-phases.ts';

/** Places `from` to `to` of the grid, `to` not included. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Where the reps of a block are compared: equal places are equal moments of the target, counted from its rise. */
export interface BlockGrid {
  readonly stepS: number;
  /** Target time of the first place. */
  readonly fromS: number;
  /** The target there. */
  readonly target: Float64Array;
  readonly corridor: Float64Array;
  /** The hit goes from the rise to the start of release; the others end where the target is down to 50 %, 10 % and off. */
  readonly phases: Readonly<Record<BrakePhase, Stretch>>;
  /** From where the target's peak stands to its start of release. */
  readonly plateau: Stretch;
  readonly release: Stretch;
  /** Target time of its onset by the score's estimator, to which reps are aligned. */
  readonly onsetS: number;
}

const STEP_S = 0.005;
/** Seconds after the target's brake off: what is still on the brake there is an error, too. */
const AFTER_S = 0.25;

const GRIDS = new WeakMap<Target, BlockGrid>();

/**
 * The grid of a target, computed once per target object.
 *
 * @throws Problem for a target that cannot be scored over time
 */
export function blockGrid(target: Target): BlockGrid {
  const known = GRIDS.get(target);
  if (known !== undefined) return known;
  const grid = build(target);
  GRIDS.set(target, grid);
  return grid;
}

function build(target: Target): BlockGrid {
  const { keys, originS } = targetReference(target);
  const { rise, peak, startOfRelease, finalRelease, brakeOff } = target.marks;
  const onReference = (index: number | null): number | null =>
    index === null ? null : originS + index / RATE_HZ;
  const halfS = onReference(keys.halfRelease) ?? (startOfRelease + finalRelease) / 2;
  const at = (timeS: number): number => Math.round((timeS - rise) / STEP_S);
  const stretch = (fromS: number, toS: number): Stretch => ({ from: at(fromS), to: at(toS) });
  const count = at(brakeOff + AFTER_S) + 1;
  const sampled = (value: (timeS: number) => number): Float64Array =>
    columnOf(count, (i) => value(rise + i * STEP_S));
  return {
    stepS: STEP_S,
    fromS: rise,
    target: sampled((timeS) => target.level.at(timeS)),
    corridor: sampled((timeS) => target.corridorAt(timeS)),
    phases: {
      hit: stretch(rise, startOfRelease),
      '100 to 50 %': stretch(startOfRelease, halfS),
      '50 to 10 %': stretch(halfS, finalRelease),
      'last 10 %': stretch(finalRelease, brakeOff),
    },
    plateau: stretch(peak, startOfRelease),
    release: stretch(startOfRelease, brakeOff),
    onsetS: originS + keys.onset / RATE_HZ,
  };
}
