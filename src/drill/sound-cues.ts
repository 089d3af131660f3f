import type { DrillView } from './drill-view.ts';
import { PLAN_DEFAULTS } from './plan/plan-defaults.ts';

/** A sound of fixed length. */
export type SoundEvent =
  /** A second of the countdown went by. */
  | 'tick'
  /** The countdown is over. */
  | 'cue'
  /** The release just told about was inside the corridor. */
  | 'inside';

/** What is to be heard now. */
export interface SoundCues {
  /** Own brake level, 0..1, to be heard as pitch; null for silence. */
  readonly voiceLevel: number | null;
  readonly events: readonly SoundEvent[];
}

const QUIETEST_LEVEL = 0.01;
const SILENCE: SoundCues = { voiceLevel: null, events: [] };

/**
 * What a driver who asked for sound hears of a view: the own pressure, never the error. Sound of the error made people
 * depend on it, sound of their own movement helped them keep what they learned (Boyer et al., Exp Brain Res 235:691,
 * 2017). Reps that hide the own trace or the target are silent: a sound would be a way round.
 *
 * @param before the view before this one, null for the first
 */
export function soundCues(view: DrillView, before: DrillView | null): SoundCues {
  if (view.feedback !== 'shown') return SILENCE;
  return {
    voiceLevel: view.phase === 'braking' ? audible(view.brakeLevel) : null,
    events: [...countdownEvents(view, before), ...resultEvents(view, before)],
  };
}

/** A foot that is off the pedal is silent. */
function audible(brakeLevel: number | null): number | null {
  return brakeLevel !== null && brakeLevel >= QUIETEST_LEVEL ? brakeLevel : null;
}

function countdownEvents(view: DrillView, before: DrillView | null): readonly SoundEvent[] {
  if (view.phase === 'cue' && before?.phase === 'countdown') return ['cue'];
  if (view.toCueS === null) return [];
  const second = Math.ceil(view.toCueS);
  const last = before?.toCueS ?? null;
  return last === null || Math.ceil(last) !== second ? ['tick'] : [];
}

/** As large a share of the release in the corridor as a plan asks for by default. */
function resultEvents({ result }: DrillView, before: DrillView | null): readonly SoundEvent[] {
  if (result === null || (before?.result ?? null) !== null) return [];
  const { outcome } = result;
  if (outcome?.kind !== 'scored') return [];
  return outcome.inCorridor >= PLAN_DEFAULTS.promotion.corridorShare ? ['inside'] : [];
}
