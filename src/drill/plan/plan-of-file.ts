import { PLAN_DEFAULTS } from './plan-defaults.ts';
import type { BlockFile, FeedbackFile, LiveZoneFile, PlanFile, ZoneFile } from './plan-file.ts';
import type {
  FactorRange,
  FeedbackRule,
  LiveCarZone,
  PlannedBlock,
  PlanZone,
  PracticePlan,
} from './practice-plan.ts';

/** The plan that a file describes which the schema and the rules let through. */
export function planOfFile(file: PlanFile, id: string): PracticePlan {
  return {
    id,
    name: file.name,
    advice: file.advice ?? null,
    zones: file.zones.map(zoneOfFile),
    firstOfDayReps: file.first_of_day_reps ?? PLAN_DEFAULTS.firstOfDayReps,
    warmUpReps: file.warm_up_reps ?? PLAN_DEFAULTS.warmUpReps,
    blocks: file.blocks.map(blockOfFile),
    feedback: feedbackOfFile(file.feedback),
    mostShownInARow: file.feedback?.most_shown_in_a_row ?? PLAN_DEFAULTS.mostShownInARow,
    hardReps: {
      fromLevel: file.hard_reps?.from_level ?? PLAN_DEFAULTS.hardFromLevel,
      most: file.hard_reps?.most ?? PLAN_DEFAULTS.mostHardReps,
      fatigueLimit: file.hard_reps?.fatigue_limit ?? PLAN_DEFAULTS.fatigueLimit,
    },
    condition: file.condition ?? null,
    carryOver: carryOverOfFile(file.carry_over),
    promotion: promotionOfFile(file.promote),
    restS: file.rest_s ?? null,
    countdownS: file.countdown_s ?? null,
    stintGapS: file.stint_gap_s ?? null,
    lateCallShare: file.late_call_share ?? 0,
  };
}

function zoneOfFile({ target, live, corner, car, variant }: ZoneFile): PlanZone {
  if (target !== undefined)
    return { kind: 'target', target, live: live === undefined ? null : liveOfFile(live) };
  const driven = { corner: corner!, car: car! };
  const named = variant === undefined ? driven : { ...driven, variant };
  return { kind: 'live car', ...liveOfFile(named) };
}

function liveOfFile({ corner, car, variant }: LiveZoneFile): LiveCarZone {
  return { corner, car, variant: variant ?? null };
}

function blockOfFile({ reps, order, vary }: BlockFile): PlannedBlock {
  return {
    reps,
    order: order ?? PLAN_DEFAULTS.order,
    vary:
      vary === undefined
        ? null
        : { level: range(vary.level_factor), releaseLength: range(vary.release_length_factor) },
  };
}

function range([from, to]: readonly number[] = [1, 1]): FactorRange {
  return { from: from!, to: to! };
}

function feedbackOfFile(file: FeedbackFile | undefined): FeedbackRule {
  if (file?.rule !== 'thinning') return { kind: 'scheduled' };
  return {
    kind: 'thinning',
    counted: file.counted ?? PLAN_DEFAULTS.counted,
    stages: file.stages.map(({ until_rep: untilRep, shown_share: shownShare }) => ({
      untilRep: untilRep ?? Number.POSITIVE_INFINITY,
      shownShare,
    })),
  };
}

function carryOverOfFile(file: PlanFile['carry_over']): PracticePlan['carryOver'] {
  if (file === undefined) return null;
  return { reps: file.reps ?? PLAN_DEFAULTS.carryOverReps, zones: file.zones.map(zoneOfFile) };
}

function promotionOfFile(file: PlanFile['promote']): PracticePlan['promotion'] {
  if (file === undefined) return null;
  const { promotion } = PLAN_DEFAULTS;
  return {
    inCorridorReps: file.in_corridor_reps ?? promotion.inCorridorReps,
    ofHiddenReps: file.of_hidden_reps ?? promotion.ofHiddenReps,
    corridorShare: file.corridor_share ?? promotion.corridorShare,
  };
}
