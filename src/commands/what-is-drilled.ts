import type { DrillSetup, RigAxes } from '../drill/drill-setup.ts';
import type { LivePlan } from '../drill/live/live-plan.ts';
import { zoneOf } from '../drill/live/zone-of.ts';
import type { AxisRole, Rig } from '../input/rig/rig.ts';
import { overTime } from '../target/over-time.ts';
import type { ZoneSubject } from './drill-subject.ts';
import type { LiveWish } from './live-options.ts';

/** What a stint and its late calls are. */
export type StintWish = Pick<LiveWish, 'stintS' | 'callShare'>;

/** Target and live car of one zone. @throws Problem where the corner needs no brake in that car */
export function whatIsDrilled(
  subject: ZoneSubject,
  wish: StintWish,
  rig: Rig,
): Pick<DrillSetup, 'target' | 'live'> {
  if (subject.kind === 'target') return { target: overTime(subject.target), live: null };
  const live = livePlan(subject, wish, rig);
  return { target: zoneOf(live, null, null).target, live };
}

/** The live car as this rig drives it. */
function livePlan(
  { car, sheet, variant, notes }: Extract<ZoneSubject, { kind: 'car' }>,
  { stintS, callShare }: StintWish,
  rig: Rig,
): LivePlan {
  const paddles = rig.buttons.some(({ action }) => action === 'downshift');
  return {
    car,
    sheet,
    variant,
    controls: { ...axesOf(rig), paddles },
    stintS,
    callShare,
    notes,
  };
}

/** What the rig has beside the brake. */
export function axesOf({ axes }: Rig): RigAxes {
  const has = (role: AxisRole): boolean => axes.some((axis) => axis.role === role);
  return { throttle: has('throttle'), clutch: has('clutch'), steering: has('steering') };
}
