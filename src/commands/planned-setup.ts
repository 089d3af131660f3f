import { localDate } from '../consistency/local-date.ts';
import type { ZonedInstant } from '../consistency/zoned-instant.ts';
import type { DrillSetup } from '../drill/drill-setup.ts';
import { startsNewDay } from '../drill/feedback-schedule.ts';
import { firstLiveRep } from '../drill/live/live-rep.ts';
import { carryOverZone } from '../drill/plan/carry-over.ts';
import { pacedIdentity } from '../drill/plan/paced-identity.ts';
import type { PracticeZone } from '../drill/plan/planned-practice.ts';
import { practiceBlocks } from '../drill/plan/practice-blocks.ts';
import type { PracticePlan } from '../drill/plan/practice-plan.ts';
import { promotionStage } from '../drill/plan/promotion-stage.ts';
import type { HistoryStore } from '../history/store.ts';
import type { Rig } from '../input/rig/rig.ts';
import { pacedStretch } from '../target/paced-stretch.ts';
import type { PlanSubject, PlanZoneSubject } from './drill-subject.ts';
import { experienceOf } from './experience.ts';
import { earlierErrors, hiddenReps, lastCarryOverDay, lastDay } from './plan-history.ts';
import { axesOf, type StintWish, whatIsDrilled } from './what-is-drilled.ts';

/** Whose history decides, and when. */
export interface PlanCircumstances {
  readonly store: HistoryStore;
  readonly driver: string;
  readonly now: ZonedInstant;
}

/** What a zone is driven on, built before anything is opened. */
export type BuiltZone = Pick<PracticeZone, 'target' | 'live'>;

/** The zones of a plan, built. */
export interface BuiltPlan {
  readonly plan: PracticePlan;
  /** With what follows after promotion; null for nothing. */
  readonly zones: readonly (BuiltZone & {
    readonly promoted: BuiltZone | null;
    readonly whyNotPaced: string | null;
  })[];
  readonly carryOver: readonly BuiltZone[];
}

/** @throws Problem where a corner needs no brake in its car */
export function builtPlan({ plan, zones, carryOver }: PlanSubject, rig: Rig): BuiltPlan {
  const wish = { stintS: plan.stintGapS, callShare: plan.lateCallShare };
  const built = (subject: PlanZoneSubject['subject']): BuiltZone => buildZone(subject, wish, rig);
  return {
    plan,
    zones: zones.map(({ subject, live }) => {
      const zone = built(subject);
      const promoted = live === null ? null : built(live);
      return { ...zone, promoted, whyNotPaced: whyNotPaced(zone, rig) };
    }),
    carryOver: carryOver.map(({ subject }) => built(subject)),
  };
}

/** What one zone is driven on. @throws Problem where a corner needs no brake in its car */
export function buildZone(
  subject: PlanZoneSubject['subject'],
  wish: StintWish,
  rig: Rig,
): BuiltZone {
  const { target, live } = whatIsDrilled(subject, wish, rig);
  return { target, live: live === null ? null : { plan: live, first: firstLiveRep(live) } };
}

/** A drill's setup with a plan: blocks, order and feedback are the plan's, as far as the history lets the driver go. */
export function plannedSetup(
  setup: DrillSetup,
  { plan, zones: built, carryOver }: BuiltPlan,
  circumstances: PlanCircumstances,
): DrillSetup {
  const promoted = built.map((zone) => zoneAsPromoted(zone, plan, circumstances));
  const zones = promoted.map(({ zone }) => zone);
  // only the blocks are paced: what the first reps of a day are compared with stays the same
  const first = zones[0]!.paced ? known(built[0]!, plan, circumstances) : zones[0]!;
  const check = dueCarryOver(carryOver, circumstances);
  const newDay = startsNewDay(first.repsInLife, setup.hoursSinceLastRep);
  const practice = {
    first,
    zones,
    newDay,
    carryOver: check && known(check, plan, circumstances),
    seed: setup.seed,
  };
  const { name, feedback, mostShownInARow, hardReps, condition } = plan;
  const remarks = promoted.flatMap(({ remark }) => (remark === null ? [] : [remark]));
  const blocks = practiceBlocks(plan, practice, ({ live, paced }) => live === null && !paced);
  return {
    ...setup,
    target: first.target,
    live: first.live?.plan ?? null,
    plan: { name, remarks, blocks, feedback, mostShownInARow, hardReps, condition },
    timing: {
      ...setup.timing,
      countdownS: plan.countdownS ?? setup.timing.countdownS,
      restS: plan.restS ?? setup.timing.restS,
    },
  };
}

/** A zone as the driver may drive it today, and what has to be said about that; null for nothing. */
interface PromotedZone {
  readonly zone: PracticeZone;
  readonly remark: string | null;
}

function zoneAsPromoted(
  built: BuiltPlan['zones'][number],
  plan: PracticePlan,
  circumstances: PlanCircumstances,
): PromotedZone {
  const { promotion } = plan;
  const plain = (remark: string | null) => ({ zone: known(built, plan, circumstances), remark });
  if (promotion === null || built.live !== null) return plain(null);
  const paced = built.whyNotPaced === null ? pacedIdentity(built.target) : null;
  const stage = promotionStage(
    hiddenReps(built.target, circumstances),
    paced && hiddenReps(paced, circumstances),
    promotion,
  );
  if (stage === 'over time') return plain(null);
  const remark = built.whyNotPaced && `${built.target.name}: ${built.whyNotPaced}.`;
  if (stage === 'live car' && built.promoted !== null)
    return { zone: known(built.promoted, plan, circumstances), remark };
  if (paced === null) return plain(remark);
  return {
    zone: { ...known({ target: paced, live: null }, plan, circumstances), paced: true },
    remark,
  };
}

/** Why a zone has no release paced by the steering, in words; null where it can have one. */
function whyNotPaced({ target, live }: BuiltZone, rig: Rig): string | null {
  if (live !== null) return null;
  const without = 'so the release paced by the steering is left out';
  if (!axesOf(rig).steering) return `the rig has no wheel, ${without}`;
  return pacedStretch(target) === null
    ? `the target has no steering while the brake comes off, ${without}`
    : null;
}

/** The zone with what the history knows of it. */
export function known(
  { target, live }: BuiltZone,
  { condition }: Pick<PracticePlan, 'condition'>,
  circumstances: PlanCircumstances,
): PracticeZone {
  const { store, driver, now } = circumstances;
  const { repsInLife, recent } = experienceOf(store, driver, target, now.utcMs);
  const reference = condition === null ? null : earlierErrors(target, condition, circumstances);
  return { target, live, repsInLife, recent, reference, paced: false };
}

function dueCarryOver(
  zones: readonly BuiltZone[],
  circumstances: PlanCircumstances,
): BuiltZone | null {
  const candidates = zones.map((zone) => ({ zone, lastDay: lastDay(zone.target, circumstances) }));
  return carryOverZone(candidates, localDate(circumstances.now), lastCarryOverDay(circumstances));
}
