import type { DrillSetup } from '../drill/drill-setup.ts';
import type { Rig } from '../input/rig/rig.ts';
import type { Target } from '../target/target.ts';
import type { DrillOptions } from './drill-options.ts';
import type { DrillSubject } from './drill-subject.ts';
import { builtLaps, lapSetup } from './lap-setup.ts';
import {
  type BuiltZone,
  builtPlan,
  type PlanCircumstances,
  plannedSetup,
} from './planned-setup.ts';
import { whatIsDrilled } from './what-is-drilled.ts';

/** What a practice is made of before the history is asked. */
interface PreparedDrill extends Pick<DrillSetup, 'target' | 'live'> {
  /** The plan it follows; null without one. */
  readonly planned: Planned | null;
  /** All that may be drilled in it. */
  readonly targets: readonly Target[];
}

/**
 * Builds what is drilled.
 *
 * @throws Problem for a corner that cannot be driven on this rig
 */
export function prepareDrill(
  subject: DrillSubject,
  options: DrillOptions,
  rig: Rig,
): PreparedDrill {
  if (subject.kind === 'event') {
    const laps = builtLaps(subject, rig);
    return {
      ...begunWith(laps.zones[0]!),
      planned: (plain, now) => lapSetup(plain, laps, now),
      targets: [...laps.zones, ...laps.outLap].map(({ target }) => target),
    };
  }
  if (subject.kind === 'plan') {
    const plan = builtPlan(subject, rig);
    const promoted = plan.zones.flatMap((zone) => zone.promoted ?? []);
    return {
      ...begunWith(plan.zones[0]!),
      planned: (plain, now) => plannedSetup(plain, plan, now),
      targets: [...plan.zones, ...promoted, ...plan.carryOver].map(({ target }) => target),
    };
  }
  const drilled = whatIsDrilled(subject, options.live, rig);
  return { ...drilled, planned: null, targets: [drilled.target] };
}

/** A plain drill's setup as a plan or an event has it, as far as the history lets the driver go. */
type Planned = (plain: DrillSetup, circumstances: PlanCircumstances) => DrillSetup;

function begunWith({ target, live }: BuiltZone): Pick<DrillSetup, 'target' | 'live'> {
  return { target, live: live?.plan ?? null };
}
