import { median } from '../../consistency/median.ts';
import type { RepScore } from '../../score/rep-score.ts';
import type { Target } from '../../target/target.ts';
import { columnOf } from '../../trace/column-of.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import { resample } from '../../trace/resample.ts';

/** How the brake goes out while the wheel goes in: pairs in the order of time, from the peak to brake off. */
export interface SteeringCoupling {
  /** 0..1. */
  readonly level: Float64Array;
  /** Left positive. */
  readonly steeringDeg: Float64Array;
}

const RATE_HZ = 100;

/** Null where no wheel was recorded. */
export function repCoupling(
  { brake, steering, endS }: RepRecord,
  { keyPoints: { peakS, brakeOffS } }: Pick<RepScore, 'keyPoints'>,
): SteeringCoupling | null {
  if (steering === null || steering.timeS.length === 0) return null;
  const count = Math.max(1, Math.round(((brakeOffS ?? endS) - peakS) * RATE_HZ) + 1);
  return {
    level: resample(brake, peakS, count, RATE_HZ),
    steeringDeg: resample(steering, peakS, count, RATE_HZ),
  };
}

/** Null for a target that leaves steering to the driver. */
export function targetCoupling({ level, steering, marks }: Target): SteeringCoupling | null {
  if (steering === null) return null;
  const count = Math.round((marks.brakeOff - marks.peak) * RATE_HZ) + 1;
  const at = (value: (timeS: number) => number): Float64Array =>
    columnOf(count, (i) => value(marks.peak + i / RATE_HZ));
  return { level: at((s) => level.at(s)), steeringDeg: at((s) => steering.at(s)) };
}

/** Where the wheel stands when the brake is last at a share of its peak. */
export function steeringAtShare(
  { level, steeringDeg }: SteeringCoupling,
  share: number,
): number | null {
  const least = share * level.reduce((most, value) => Math.max(most, value), 0);
  return steeringDeg[level.findLastIndex((value) => value >= least)] ?? null;
}

/** Shares of the peak by which a driver may think of the wheel, in their order. */
const SPOKEN = [
  { share: 0.5, words: 'half' },
  { share: 0.25, words: 'a quarter' },
  { share: 0.1, words: 'a tenth' },
] as const;
/** Less is going straight: nothing to tell yet. */
const TURNED_DEG = 10;

/**
 * One line for the driver: where the wheel is when the brake is down to half, or to less where the wheel is still
 * straight by then.
 */
export function couplingReading(
  reps: readonly SteeringCoupling[],
  target: SteeringCoupling | null,
): string {
  const places = SPOKEN.map(({ share, words }) => ({ words, ...anglesAt(reps, target, share) }));
  const { words, middle, wanted } =
    places.find((place) => Math.abs(place.wanted ?? place.middle ?? 0) >= TURNED_DEG) ?? places[0]!;
  if (middle === null) return 'no wheel was recorded.';
  const asked = wanted === null ? '' : `, the target's at ${degrees(wanted)}`;
  const who = reps.length === 1 ? 'of one rep' : `in the median of ${reps.length} reps`;
  return `with the brake down to ${words} of its peak, the wheel is at ${degrees(middle)} ${who}${asked}.`;
}

function anglesAt(
  reps: readonly SteeringCoupling[],
  target: SteeringCoupling | null,
  share: number,
): { readonly middle: number | null; readonly wanted: number | null } {
  return {
    middle: median(reps.flatMap((rep) => steeringAtShare(rep, share) ?? [])),
    wanted: target && steeringAtShare(target, share),
  };
}

function degrees(angle: number): string {
  const rounded = Math.round(Math.abs(angle));
  if (rounded === 0) return '0°';
  return `${rounded}° ${angle > 0 ? 'left' : 'right'}`;
}
