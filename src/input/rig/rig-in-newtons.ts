import { fullScaleNewtons } from './load-newtons.ts';
import type { Rig } from './rig.ts';

/** What a target asks of a pedal. */
export interface AskedForce {
  /** Pedal force that level 1 stands for; null where the target does not say it. */
  readonly fullScaleN: number | null;
  readonly peakLevel: number;
}

/** A rig as it is drilled on, and what its levels are shares of. */
export interface RigInNewtons {
  readonly rig: Rig;
  readonly counts:
    | { readonly in: 'own full scale' }
    /** Level 1 is this force, as in the car. */
    | { readonly in: 'newtons'; readonly fullScaleN: number }
    /** The targets ask for more than the driver's full scale: levels stay shares of that. */
    | { readonly in: 'own full scale'; readonly askedN: number; readonly ownN: number };
}

/**
 * The rig with levels in the newtons of the targets of a practice, where it was put under known loads: what they ask for
 * is then the force itself. Levels stay shares of the driver's own full scale where a target does not say its force,
 * where the targets count in different forces, and where one asks for more than the driver's full scale, which is the
 * most that they want to press. The force of the pedal at rest is taken as none.
 *
 * @param asked every target of the practice: one history of one calibration belongs to it
 */
export function rigInNewtons(rig: Rig, asked: readonly AskedForce[]): RigInNewtons {
  const brake = rig.axes.find(({ role }) => role === 'brake');
  const ownN = brake === undefined ? null : fullScaleNewtons(brake.calibration);
  const fullScaleN = asked[0]?.fullScaleN ?? null;
  if (ownN === null || fullScaleN === null || !(ownN > 0)) return unchanged(rig);
  if (asked.some((one) => one.fullScaleN !== fullScaleN)) return unchanged(rig);
  const askedN = fullScaleN * Math.max(...asked.map(({ peakLevel }) => peakLevel));
  if (askedN > ownN) return { rig, counts: { in: 'own full scale', askedN, ownN } };
  const fullLevel = ownN / fullScaleN;
  const axes = rig.axes.map((axis) =>
    axis === brake ? { ...axis, calibration: { ...axis.calibration, fullLevel } } : axis,
  );
  return { rig: { ...rig, axes }, counts: { in: 'newtons', fullScaleN } };
}

function unchanged(rig: Rig): RigInNewtons {
  return { rig, counts: { in: 'own full scale' } };
}
