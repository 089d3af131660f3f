import type { DrillSetup } from '../drill/drill-setup.ts';
import { lapBlocks } from '../drill/event/lap-blocks.ts';
import { startsNewDay } from '../drill/feedback-schedule.ts';
import { PLAN_DEFAULTS } from '../drill/plan/plan-defaults.ts';
import type { PlannedPractice, PracticeZone } from '../drill/plan/planned-practice.ts';
import type { PracticePlan } from '../drill/plan/practice-plan.ts';
import type { Rig } from '../input/rig/rig.ts';
import type { EventSubject } from './drill-subject.ts';
import type { LapZone } from './event-lap.ts';
import { type BuiltZone, buildZone, known, type PlanCircumstances } from './planned-setup.ts';

/** The laps of an event, built. */
interface BuiltLaps {
  readonly subject: EventSubject;
  readonly zones: readonly BuiltZone[];
  /** The same array where the out-lap is driven like the others. */
  readonly outLap: readonly BuiltZone[];
}

/** What a plan says about laps: feedback, hard reps, condition, late calls, countdown. Zones, order and rest are the event's. */
type LapPlan = Pick<PlannedPractice, 'feedback' | 'mostShownInARow' | 'hardReps' | 'condition'>;

const USUAL_PLAN: LapPlan = {
  feedback: { kind: 'scheduled' },
  mostShownInARow: PLAN_DEFAULTS.mostShownInARow,
  hardReps: {
    fromLevel: PLAN_DEFAULTS.hardFromLevel,
    most: PLAN_DEFAULTS.mostHardReps,
    fatigueLimit: PLAN_DEFAULTS.fatigueLimit,
  },
  condition: null,
};

/** @throws Problem where a corner needs no brake in its car */
export function builtLaps(subject: EventSubject, rig: Rig): BuiltLaps {
  const { event, session, plan, lap, outLap } = subject;
  const callShare = callShareOf(plan) ?? session.lateCallShare;
  const build = (zone: LapZone): BuiltZone => {
    const stintS = event.brakesStayHot ? zone.gapS : null;
    return buildZone(zone.subject, { stintS, callShare }, rig);
  };
  const zones = lap.map(build);
  return { subject, zones, outLap: outLap === lap ? zones : outLap.map(build) };
}

/** A plan without late calls has nothing to say about them. */
function callShareOf(plan: PracticePlan | null): number | null {
  return plan === null || plan.lateCallShare === 0 ? null : plan.lateCallShare;
}

/**
 * A drill's setup with the laps of an event. The first lap of a day is the out-lap, without a target, where every corner
 * of it was driven before.
 */
export function lapSetup(
  setup: DrillSetup,
  { subject, zones: built, outLap }: BuiltLaps,
  circumstances: PlanCircumstances,
): DrillSetup {
  const plan: LapPlan = subject.plan ?? USUAL_PLAN;
  const zoneOf = (zone: BuiltZone, i: number): PracticeZone => ({
    ...known(zone, plan, circumstances),
    gapS: subject.lap[i]!.gapS,
  });
  const zones = built.map(zoneOf);
  const first = outLap === built ? zones : outLap.map(zoneOf);
  const leastReps = Math.min(...first.map(({ repsInLife }) => repsInLife));
  const blocks = lapBlocks({
    zones,
    outLap: startsNewDay(leastReps, setup.hoursSinceLastRep) ? first : null,
    laps: subject.laps,
    mostReps: plan.hardReps.most,
  });
  const { feedback, mostShownInARow, hardReps, condition } = plan;
  const { zone: start } = blocks[0]!.reps[0]!;
  return {
    ...setup,
    target: start.target,
    live: start.live?.plan ?? null,
    plan: {
      name: subject.event.name,
      remarks: [],
      blocks,
      feedback,
      mostShownInARow,
      hardReps,
      condition,
      lapZones: zones.length,
    },
    timing: {
      ...setup.timing,
      countdownS: subject.plan?.countdownS ?? setup.timing.countdownS,
    },
  };
}
