import { localDate } from '../consistency/local-date.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import type { DrillSetup } from '../drill/drill-setup.ts';
import { startsNewDay } from '../drill/feedback-schedule.ts';
import { firstLiveRep } from '../drill/live/live-rep.ts';
import { carryOverZone } from '../drill/plan/carry-over.ts';
import type { PracticeZone } from '../drill/plan/planned-practice.ts';
import { practiceBlocks } from '../drill/plan/practice-blocks.ts';
import type { PracticePlan } from '../drill/plan/practice-plan.ts';
import { promotionStage } from '../drill/plan/promotion-stage.ts';
import type { HistoryStore } from '../history/store.ts';
import type { Rig } from '../input/rig/rig.ts';
import { experienceOf } from './drill-history.ts';
import type { PlanSubject, PlanZoneSubject } from './drill-subject.ts';
import { earlierErrors, hiddenReps, lastCarryOverDay, lastDay } from './plan-history.ts';
import { whatIsDrilled } from './what-is-drilled.ts';

/** Whose history decides, and when. */
export interface PlanCircumstances {
  readonly store: HistoryStore;
  readonly driver: string;
  readonly now: ZonedInstant;
}

/** What a zone is driven on, built before anything is opened. */
type BuiltZone = Pick<PracticeZone, 'target' | 'live'>;

/** The zones of a plan, built. */
export interface BuiltPlan {
  readonly plan: PracticePlan;
  /** With what follows after promotion; null for nothing. */
  readonly zones: readonly (BuiltZone & { readonly promoted: BuiltZone | null })[];
  readonly carryOver: readonly BuiltZone[];
}

/** @throws Problem where a corner needs no brake in its car */
export function builtPlan({ plan, zones, carryOver }: PlanSubject, rig: Rig): BuiltPlan {
  const wish = { stintS: plan.stintGapS, callShare: plan.lateCallShare };
  const built = (subject: PlanZoneSubject['subject']): BuiltZone => {
    const { target, live } = whatIsDrilled(subject, wish, rig);
    return { target, live: live === null ? null : { plan: live, first: firstLiveRep(live) } };
  };
  return {
    plan,
    zones: zones.map(({ subject, live }) => ({
      ...built(subject),
      promoted: live === null ? null : built(live),
    })),
    carryOver: carryOver.map(({ subject }) => built(subject)),
  };
}

/** A drill's setup with a plan: blocks, order and feedback are the plan's, as far as the history lets the driver go. */
export function plannedSetup(
  setup: DrillSetup,
  { plan, zones: built, carryOver }: BuiltPlan,
  circumstances: PlanCircumstances,
): DrillSetup {
  const zones = built.map((zone) => zoneAsPromoted(zone, plan, circumstances));
  const first = zones[0]!;
  const check = dueCarryOver(carryOver, circumstances);
  const newDay = startsNewDay(first.repsInLife, setup.hoursSinceLastRep);
  const practice = {
    zones,
    newDay,
    carryOver: check && known(check, plan, circumstances),
    seed: setup.seed,
  };
  const { name, feedback, mostShownInARow, hardReps, condition } = plan;
  const blocks = practiceBlocks(plan, practice, ({ live }) => live === null);
  return {
    ...setup,
    target: first.target,
    live: first.live?.plan ?? null,
    plan: { name, blocks, feedback, mostShownInARow, hardReps, condition },
    timing: {
      ...setup.timing,
      countdownS: plan.countdownS ?? setup.timing.countdownS,
      restS: plan.restS ?? setup.timing.restS,
    },
  };
}

function zoneAsPromoted(
  zone: BuiltPlan['zones'][number],
  plan: PracticePlan,
  circumstances: PlanCircumstances,
): PracticeZone {
  const { promotion } = plan;
  if (promotion === null || zone.live !== null) return known(zone, plan, circumstances);
  const stage = promotionStage(hiddenReps(zone.target, circumstances), promotion);
  if (stage === 'live car' && zone.promoted !== null)
    return known(zone.promoted, plan, circumstances);
  const task = stage === 'over time' ? null : 'paced by the steering';
  return { ...known(zone, plan, circumstances), task };
}

/** The zone with what the history knows of it. */
function known(
  { target, live }: BuiltZone,
  { condition }: PracticePlan,
  circumstances: PlanCircumstances,
): PracticeZone {
  const { store, driver, now } = circumstances;
  const { repsInLife, recent } = experienceOf(store, driver, target, now.utcMs);
  const reference = condition === null ? null : earlierErrors(target, condition, circumstances);
  return { target, live, repsInLife, recent, reference, task: null };
}

function dueCarryOver(
  zones: readonly BuiltZone[],
  circumstances: PlanCircumstances,
): BuiltZone | null {
  const candidates = zones.map((zone) => ({ zone, lastDay: lastDay(zone.target, circumstances) }));
  return carryOverZone(candidates, localDate(circumstances.now), lastCarryOverDay(circumstances));
}
