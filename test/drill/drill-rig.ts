import { PLAIN_DISPLAY } from '../../src/drill/display/display-settings.ts';
import type { DrillEffect, KeyAction } from '../../src/drill/drill-message.ts';
import type { DrillModel } from '../../src/drill/drill-model.ts';
import { type DrillSetup, REP_TIMING } from '../../src/drill/drill-setup.ts';
import { startDrill } from '../../src/drill/start-drill.ts';
import { update } from '../../src/drill/update.ts';
import type { RepOutcome } from '../../src/score/rep-score.ts';
import type { Target } from '../../src/target/target.ts';
import type { ButtonEvent, RigBatch } from '../../src/trace/rig-batch.ts';
import { EMPTY_TRACK, type Track } from '../../src/trace/track.ts';

/** 0 to 80 % in 0.1 s, held for 0.3 s, then straight to 0 over 1 s. */
export const RAMP: Target = {
  id: 'ramp',
  version: 'v1',
  name: 'Ramp',
  cornerType: 'hairpin',
  domain: 'time',
  speeds: null,
  level: { start: 0, end: 1.4, at: (x) => 0.8 * Math.max(0, Math.min(1, x / 0.1, 1.4 - x)) },
  steering: null,
  gears: [
    { at: 0.3, gear: 3 },
    { at: 0.6, gear: 2 },
  ],
  marks: {
    rise: 0,
    peak: 0.1,
    startOfRelease: 0.4,
    turnIn: 0.5,
    apex: null,
    finalRelease: 1.3,
    brakeOff: 1.4,
  },
  peakLevel: 0.8,
  corridorAt: () => 0.04,
  fullScale: { pedalForceN: null, pressureBar: null },
  advice: null,
  learnedFrom: null,
};

export function setup(change: Partial<DrillSetup> = {}): DrillSetup {
  return {
    target: RAMP,
    live: null,
    plan: null,
    reps: 10,
    seed: 1,
    repsInLife: 0,
    recent: [],
    hoursSinceLastRep: null,
    feedback: null,
    asksRating: false,
    ratingWaitS: null,
    axes: { throttle: true, clutch: true, steering: true },
    buttons: [],
    display: PLAIN_DISPLAY,
    brakeStepLevel: 1 / 4095,
    forceRemark: null,
    ownFullScaleN: null,
    isFirstRun: false,
    timing: REP_TIMING,
    units: 'metric',
    ...change,
  };
}

/** With the foot off from the first sample on the rep is armed at 0.301 s and the cue comes 3 s later. */
export const CUE_S = 3.301;
/** Where the scripts of the tests start to brake. */
export const START_S: number = CUE_S + 0.1;

/** What a rig does over time; an axis that is left out stays at rest. */
export interface Script {
  /** Null for a brake that says nothing at all. */
  readonly brake: ((timeS: number) => number) | null;
  readonly clutch?: (timeS: number) => number;
  readonly steering?: (timeS: number) => number;
  readonly buttons?: readonly ButtonEvent[];
}

export interface Feed {
  readonly fromS: number;
  readonly toS: number;
  /** Samples per second. */
  readonly rateHz?: number;
  /** Length of a batch in samples. */
  readonly batch?: number;
  readonly outcome?: RepOutcome;
}

export interface Fed {
  readonly model: DrillModel;
  readonly effects: readonly DrillEffect[];
}

/** Plays a script to the drill, answering each `score` effect with `outcome` at once. */
export function feed(model: DrillModel, script: Script, how: Feed): Fed {
  const { fromS, toS, rateHz = 1000, batch = 8, outcome = NEVER_BRAKED } = how;
  const samples = Math.round((toS - fromS) * rateHz);
  let fed: Fed = { model, effects: [] };
  for (let first = 1; first <= samples; first += batch) {
    const count = Math.min(batch, samples - first + 1);
    const times = Float64Array.from({ length: count }, (_, i) => fromS + (first + i) / rateHz);
    fed = say(fed, { kind: 'batch', batch: scripted(script, times), health: [] }, outcome);
  }
  return fed;
}

export function say(
  { model, effects }: Fed,
  message: Parameters<typeof update>[1],
  outcome: RepOutcome = NEVER_BRAKED,
): Fed {
  const [next, wanted] = update(model, message);
  let fed: Fed = { model: next, effects: [...effects, ...wanted] };
  for (const effect of wanted)
    if (effect.kind === 'score') fed = say(fed, { kind: 'scored', rep: effect.rep, outcome });
  return fed;
}

function scripted(script: Script, timeS: Float64Array): RigBatch {
  const track = (f: ((t: number) => number) | null | undefined): Track =>
    f == null ? EMPTY_TRACK : { timeS, value: timeS.map(f) };
  const untilS = timeS.at(-1)!;
  const previousS = timeS[0]! - 1e-9;
  return {
    brake: track(script.brake),
    throttle: EMPTY_TRACK,
    clutch: track(script.clutch),
    steering: track(script.steering),
    buttons: (script.buttons ?? []).filter((b) => b.timeS > previousS && b.timeS <= untilS),
    gaps: [],
    untilS,
    dropped: 0,
  };
}

export const NEVER_BRAKED: RepOutcome = {
  kind: 'no-rep',
  version: 1,
  score: 0,
  reason: 'never braked',
  side: null,
  flags: [],
};

export const fresh = (change: Partial<DrillSetup> = {}): DrillModel => startDrill(setup(change));

/** Keys pressed one after the other. */
export function press(fed: Fed, ...keys: readonly KeyAction[]): Fed {
  return keys.reduce((now, action) => say(now, { kind: 'key', action }), fed);
}
