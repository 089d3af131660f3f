import type { LiveZone } from '../../live/live-zone.ts';
import type { RepOutcome } from '../../score/rep-score.ts';
import type { GripTrace } from '../../target/derive/grip-trace.ts';
import { columnOf } from '../../trace/column-of.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import type { Track } from '../../trace/track.ts';
import { repCoupling, type SteeringCoupling } from '../diagnosis/steering-coupling.ts';
import { type OwnLanes, type RepDrive, STRIDE_S } from '../live/rep-drive.ts';
import { trackOf } from '../sample-log.ts';

/** What the pictures of the rest show of a rep, worked out once when it is over. */
export interface DrawnRep {
  /** From where the brake took hold to the slowest point; null in a drill over time and where it was never braked. */
  readonly grip: GripTrace | null;
  /** Null where no wheel was recorded. */
  readonly coupling: SteeringCoupling | null;
}

/** A rep that has ended; `zone` and `drive` are null in a drill over time. */
interface EndedRep {
  readonly record: RepRecord;
  readonly zone: LiveZone | null;
  readonly drive: RepDrive | null;
}

/** Null for a rep that was not scored. */
export function drawnRep({ record, zone, drive }: EndedRep, outcome: RepOutcome): DrawnRep | null {
  if (outcome.kind !== 'scored') return null;
  const slowestM = zone?.derived.zone.slowestM ?? null;
  return {
    grip: drive === null || slowestM === null ? null : gripOf(drive, slowestM),
    coupling: repCoupling(record, outcome),
  };
}

/** A shift's jolt and the steps of anti-lock are shorter than this, and nobody reads them off a diagram, s. */
const SMOOTHED_S = 0.05;
const HALF = Math.round(SMOOTHED_S / STRIDE_S / 2);

function gripOf({ own, car: { brakedFromM } }: RepDrive, slowestM: number): GripTrace | null {
  if (brakedFromM === null) return null;
  const { timeS: places } = trackOf(own.speedMps);
  const from = places.findIndex((sM) => sM >= brakedFromM);
  const behind = places.findIndex((sM) => sM > slowestM);
  const to = behind < 0 ? places.length : behind;
  if (from < 0 || to <= from) return null;
  const lane = (name: keyof OwnLanes): Float64Array => smoothed(trackOf(own[name]), from, to);
  return {
    placeM: places.slice(from, to),
    accelXMps2: slope(trackOf(own.speedMps), from, to),
    accelYMps2: lane('accelYMps2'),
    frontUse: lane('frontUse'),
    rearUse: lane('rearUse'),
  };
}

/** Change of speed over what lies within half of `SMOOTHED_S` either way. */
function slope({ value }: Track, from: number, to: number): Float64Array {
  return columnOf(to - from, (i) => {
    const first = Math.max(0, from + i - HALF);
    const last = Math.min(value.length - 1, from + i + HALF);
    return last > first ? (value[last]! - value[first]!) / ((last - first) * STRIDE_S) : 0;
  });
}

/** The mean of what lies within half of `SMOOTHED_S` either way; at the ends of as much as there is on both sides. */
function smoothed({ value }: Track, from: number, to: number): Float64Array {
  return columnOf(to - from, (i) => {
    const half = Math.min(HALF, i, to - from - 1 - i);
    let sum = 0;
    for (let at = from + i - half; at <= from + i + half; at++) sum += value[at]!;
    return sum / (2 * half + 1);
  });
}
