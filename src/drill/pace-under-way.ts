import { type PacedStretch, pacedStretch } from '../target/paced-stretch.ts';
import { advancePace, PACE_HZ, startPace, type WheelPace } from '../target/wheel-pace.ts';
import type { Track } from '../trace/track.ts';
import type { DrillModel } from './drill-model.ts';
import { recordedTrack } from './recording.ts';
import { appendSamples, EMPTY_LOG, type SampleLog } from './sample-log.ts';

/** A rep whose place on the target follows the driver's wheel, as far as it has come. */
export interface PaceUnderWay {
  readonly stretch: PacedStretch;
  readonly now: WheelPace;
  /** The place at every step since the target's zero. */
  readonly places: SampleLog;
  /** When the wheel had taken the target to its brake off, on the source's clock; null while it has not. */
  readonly brakeOffAtS: number | null;
}

/** Null in a rep that follows the clock. */
export function paceFromOnset(
  { setup, paced, recording, atS }: DrillModel,
  originS: number,
): PaceUnderWay | null {
  const stretch = paced ? pacedStretch(setup.target) : null;
  if (stretch === null || recording === null) return null;
  const wheel = recordedTrack(recording, 'steering', originS, atS);
  const start = {
    stretch,
    now: startPace(wheel.value[0] ?? null),
    places: appendSamples(EMPTY_LOG, { timeS: ZERO, value: ZERO }, 0, 1, 0),
    brakeOffAtS: null,
  };
  return followWheel(start, wheel, {
    originS,
    untilS: atS,
    brakeOffS: setup.target.marks.brakeOff,
  });
}

const ZERO: Float64Array = new Float64Array(1);

/** The pace with the samples of the wheel up to `untilS`. */
export function followWheel(
  pace: PaceUnderWay,
  wheel: Track,
  span: { readonly originS: number; readonly untilS: number; readonly brakeOffS: number },
): PaceUnderWay {
  const { originS, untilS, brakeOffS } = span;
  const placed: number[] = [];
  const now = advancePace(pace.now, pace.stretch, wheel, originS, untilS, (placeS) =>
    placed.push(placeS),
  );
  const first = pace.now.steps + 1;
  const value = Float64Array.from(placed);
  const timeS = value.map((_, i) => (first + i) / PACE_HZ);
  const off = pace.brakeOffAtS === null ? placed.findIndex((placeS) => placeS >= brakeOffS) : -1;
  return {
    ...pace,
    now,
    places: appendSamples(pace.places, { timeS, value }, 0, value.length, 0),
    brakeOffAtS: off === -1 ? pace.brakeOffAtS : originS + (first + off) / PACE_HZ,
  };
}

/** Target time of a moment since the target's zero. */
export function placeAt({ places }: PaceUnderWay, sinceS: number): number {
  if (sinceS <= 0) return sinceS;
  const step = Math.min(places.count - 1, Math.floor(sinceS * PACE_HZ + 1e-6));
  return places.buffer.value[step]!;
}

/** Adds samples `from` to `to` (exclusive) of a track to what is drawn: at their times, or their places on the target. */
export function appendOwn(
  log: SampleLog,
  track: Track,
  { from, to, originS }: { readonly from: number; readonly to: number; readonly originS: number },
  pace: PaceUnderWay | null,
): SampleLog {
  if (pace === null) return appendSamples(log, track, from, to, originS);
  const value = track.value.subarray(from, to);
  const timeS = track.timeS.subarray(from, to).map((sampleS) => placeAt(pace, sampleS - originS));
  return appendSamples(log, { timeS, value }, 0, value.length, 0);
}
