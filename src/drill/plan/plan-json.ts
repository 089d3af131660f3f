import type { FactorRange, FeedbackRule, PlanZone, PracticePlan } from './practice-plan.ts';

/** A plan as one JSON object, in the words of its file. */
export function planJson(plan: PracticePlan): Record<string, unknown> {
  const { carryOver, promotion, hardReps } = plan;
  return {
    id: plan.id,
    name: plan.name,
    advice: plan.advice,
    zones: plan.zones.map(zoneJson),
    first_of_day_reps: plan.firstOfDayReps,
    warm_up_reps: plan.warmUpReps,
    blocks: plan.blocks.map(({ reps, order, vary }) => ({
      reps,
      order,
      vary: vary && {
        level_factor: pair(vary.level),
        release_length_factor: pair(vary.releaseLength),
      },
    })),
    feedback: { ...feedbackJson(plan.feedback), most_shown_in_a_row: plan.mostShownInARow },
    hard_reps: {
      from_level: hardReps.fromLevel,
      most: hardReps.most,
      fatigue_limit: hardReps.fatigueLimit,
    },
    condition: plan.condition,
    carry_over: carryOver && { reps: carryOver.reps, zones: carryOver.zones.map(zoneJson) },
    promote: promotion && {
      in_corridor_reps: promotion.inCorridorReps,
      of_hidden_reps: promotion.ofHiddenReps,
      corridor_share: promotion.corridorShare,
    },
    rest_s: plan.restS,
    countdown_s: plan.countdownS,
    stint_gap_s: plan.stintGapS,
    late_call_share: plan.lateCallShare,
  };
}

function zoneJson(zone: PlanZone): Record<string, unknown> {
  const none = { target: null, live: null, corner: null, car: null, variant: null };
  if (zone.kind === 'target') return { ...none, target: zone.target, live: zone.live };
  return { ...none, corner: zone.corner, car: zone.car, variant: zone.variant };
}

function pair({ from, to }: FactorRange): readonly [number, number] {
  return [from, to];
}

function feedbackJson(rule: FeedbackRule): Record<string, unknown> {
  if (rule.kind === 'scheduled') return { rule: 'scheduled', counted: null, stages: null };
  return {
    rule: 'thinning',
    counted: rule.counted,
    stages: rule.stages.map(({ untilRep, shownShare }) => ({
      until_rep: Number.isFinite(untilRep) ? untilRep : null,
      shown_share: shownShare,
    })),
  };
}
