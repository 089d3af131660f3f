import type { Promotion } from './practice-plan.ts';

/** A rep that hid the own trace, scored. */
export interface HiddenRep {
  /** Share of the release window inside the corridor, 0..1; 0 for a rep without a release. */
  readonly inCorridor: number;
  /** Steering against brake, minus the same of the target: positive is a late wheel. Null without a wheel. */
  readonly steeringLagErrorS: number | null;
}

/** What a driver is ready for: the load grows only as far as what is there already is mastered. */
export type PromotionStage = 'over time' | 'paced by the steering' | 'live car';

/** Wheel and brake go together when they are no further apart than this (common practice, no source). */
const TOGETHER_S = 0.1;

/**
 * What comes next for a driver on a target. So many of the last hidden reps in the corridor earn a release paced by the
 * steering: the same target, but a rep counts only where the wheel went in with the brake as the target has it. So many
 * of those earn the live car. Without a wheel the step between is left out. Nothing but the reps is looked at, so that
 * whoever loses it over a break starts where the foot is (Guadagnoli and Lee, J Mot Behav 36:212, 2004).
 *
 * @param hidden oldest first, all of one version of the target
 */
export function promotionStage(
  hidden: readonly HiddenRep[],
  { inCorridorReps, ofHiddenReps, corridorShare }: Promotion,
): PromotionStage {
  const good = hidden.slice(-ofHiddenReps).filter((rep) => rep.inCorridor >= corridorShare);
  if (good.length < inCorridorReps) return 'over time';
  const paced = good.filter(
    ({ steeringLagErrorS: lag }) => lag === null || Math.abs(lag) <= TOGETHER_S,
  );
  return paced.length < inCorridorReps ? 'paced by the steering' : 'live car';
}
