import {
  QUANTA_PER_BRAKE_LEVEL,
  QUANTA_PER_DEGREE,
  QUANTA_PER_LEVEL,
  TICKS_PER_S,
  toQuanta,
} from '../../trace/quanta.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import type { ButtonAction } from '../../trace/rig-batch.ts';
import type { Track } from '../../trace/track.ts';

/** Whole numbers on the grid of the history: exact, and the same in every language that reads JSON. */
export interface TrackJson {
  /** The first from the cue, each other from the one before; 0.1 ms. */
  readonly stepTicks: readonly number[];
  readonly quanta: readonly number[];
}

/** The samples of a rep as an archive holds them. */
export interface SamplesJson {
  readonly brake: TrackJson;
  readonly throttle: TrackJson | null;
  readonly clutch: TrackJson | null;
  readonly steering: TrackJson | null;
  readonly buttons: readonly {
    readonly atTicks: number;
    readonly control: string;
    readonly pressed: boolean;
    readonly action: ButtonAction | null;
  }[];
  readonly gaps: readonly { readonly fromTicks: number; readonly toTicks: number }[];
  readonly brakeStepLevel: number;
  readonly endTicks: number;
}

export function samplesJson(record: RepRecord): SamplesJson {
  return {
    brake: trackJson(record.brake, QUANTA_PER_BRAKE_LEVEL),
    throttle: record.throttle && trackJson(record.throttle, QUANTA_PER_LEVEL),
    clutch: record.clutch && trackJson(record.clutch, QUANTA_PER_LEVEL),
    steering: record.steering && trackJson(record.steering, QUANTA_PER_DEGREE),
    buttons: record.buttons.map(({ timeS, control, pressed, action }) => ({
      atTicks: ticks(timeS),
      control,
      pressed,
      action,
    })),
    gaps: record.gaps.map(({ fromS, toS }) => ({ fromTicks: ticks(fromS), toTicks: ticks(toS) })),
    brakeStepLevel: record.brakeStepLevel,
    endTicks: ticks(record.endS),
  };
}

/** The record of which `samplesJson` was made, to the bit. */
export function recordOfSamples(samples: SamplesJson): RepRecord {
  return {
    brake: track(samples.brake, QUANTA_PER_BRAKE_LEVEL),
    throttle: samples.throttle && track(samples.throttle, QUANTA_PER_LEVEL),
    clutch: samples.clutch && track(samples.clutch, QUANTA_PER_LEVEL),
    steering: samples.steering && track(samples.steering, QUANTA_PER_DEGREE),
    buttons: samples.buttons.map(({ atTicks, control, pressed, action }) => ({
      timeS: atTicks / TICKS_PER_S,
      control,
      pressed,
      action,
    })),
    gaps: samples.gaps.map(({ fromTicks, toTicks }) => ({
      fromS: fromTicks / TICKS_PER_S,
      toS: toTicks / TICKS_PER_S,
    })),
    brakeStepLevel: samples.brakeStepLevel,
    endS: samples.endTicks / TICKS_PER_S,
  };
}

function trackJson({ timeS, value }: Track, perUnit: number): TrackJson {
  const at = Array.from(timeS, ticks);
  return {
    stepTicks: at.map((tick, i) => tick - (at[i - 1] ?? 0)),
    quanta: Array.from(value, (one) => toQuanta(one, perUnit)),
  };
}

function track({ stepTicks, quanta }: TrackJson, perUnit: number): Track {
  let at = 0;
  const timeS = Float64Array.from(stepTicks, (step) => {
    at += step;
    return at / TICKS_PER_S;
  });
  return { timeS, value: Float64Array.from(quanta, (one) => one / perUnit) };
}

function ticks(timeS: number): number {
  return toQuanta(timeS, TICKS_PER_S);
}
