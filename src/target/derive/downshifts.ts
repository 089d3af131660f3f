import type { Car } from '../../car/car.ts';
import { engineRpm, overRevSpeedMps, unmatchedShiftN } from '../../car/gearbox.ts';
import { axleUse } from '../../corner/axle-use.ts';
import type { Corner } from '../../corner/corner.ts';
import type { ProfileCurve } from '../../corner/profile-curve.ts';
import {
  engineBrakingInGearN,
  type GearSchedule,
  type ZoneSetting,
  zoneSetting,
} from './zone-model.ts';

/** One downshift of a zone. */
export interface Downshift {
  readonly fromGear: number;
  readonly toGear: number;
  /** Where the plan puts it, m from turn-in. */
  readonly atM: number;
  /** Earliest place without over-rev and without the rear axle letting go; null where there is none. */
  readonly earliestM: number | null;
  readonly speedMps: number;
  /** Engine speed after the shift. */
  readonly rpm: number;
  /**
   * Share of the brake force to give up during the shift so that the rear axle holds, in hundredths; 0 where it holds
   * without, and where what a driver may give up does not do.
   */
  readonly ease: number;
  /** Grip the rear axle uses with the brake eased so far, while the engine is dragged up to speed. */
  readonly rearUse: number;
  /** Neither over-revs nor, with the brake eased by no more than the corridor's 5 %, asks the rear axle for more than it has. */
  readonly safe: boolean;
}

const SEARCH_STEP_M = 0.5;
/** Hundredths of the brake force a driver may give up during a shift and still be on the target (the corridor's 5 %). */
const MOST_EASE = 5;

/** Where speeds and brake forces are known, of a profile or of a car that was really driven. */
interface ShiftZone {
  readonly car: Car;
  readonly corner: Corner;
  readonly curve: Pick<ProfileCurve, 'speedMps' | 'brakeForceN'>;
  readonly slowestM: number;
  /** See `AxleCircumstances`; none if left out. */
  readonly lateLoadN?: (sM: number) => number;
}

/** The same with the car and the road resolved: the search asks at every half metre. */
type ResolvedZone = ShiftZone & ZoneSetting;

interface Zone extends ResolvedZone {
  readonly brakePointM: number;
}

/**
 * The downshifts from the approach gear to the slowest point's, each where the plan puts it or else at its earliest
 * safe place after the one before.
 */
export function planDownshifts(zone: Zone): Downshift[] {
  const { gears } = zone.corner;
  const shifts: Downshift[] = [];
  let fromM = zone.brakePointM;
  for (let gear = gears.approach; gear > gears.slowest; gear--) {
    const earliestM = firstSafeM(zone, gear, fromM);
    const atM = gears.shiftsAtM?.[gears.approach - gear] ?? earliestM ?? zone.slowestM;
    shifts.push(describe(zone, gear, atM, earliestM));
    fromM = atM;
  }
  return shifts;
}

/** The gear of every place that a list of downshifts makes. */
export function scheduleOf(corner: Corner, shifts: readonly Downshift[]): GearSchedule {
  return [
    { fromM: Number.NEGATIVE_INFINITY, gear: corner.gears.approach },
    ...shifts.map(({ atM, toGear }) => ({ fromM: atM, gear: toGear })),
  ];
}

function describe(zone: Zone, fromGear: number, atM: number, earliestM: number | null): Downshift {
  const speedMps = zone.curve.speedMps(atM);
  const ease = easeFor(zone, fromGear, atM);
  return {
    fromGear,
    toGear: fromGear - 1,
    atM,
    earliestM,
    speedMps,
    rpm: engineRpm(zone.car.gearbox, fromGear - 1, speedMps),
    ease: ease ?? 0,
    rearUse: rearUseDuringShift(zone, fromGear, atM, 1 - (ease ?? 0)),
    safe: isSlowEnough(zone, fromGear, atM) && ease !== null,
  };
}

/** The least that has to be given up; null where the most does not do. */
function easeFor(zone: ResolvedZone, fromGear: number, sM: number): number | null {
  for (let ease = 0; ease <= MOST_EASE; ease++)
    if (rearUseDuringShift(zone, fromGear, sM, 1 - ease / 100) <= 1) return ease / 100;
  return null;
}

/** First place from `fromM` on where a downshift neither over-revs nor makes the rear axle let go; null for none. */
export function earliestSafeM(zone: ShiftZone, fromGear: number, fromM: number): number | null {
  return firstSafeM({ ...zone, ...zoneSetting(zone.car, zone.corner) }, fromGear, fromM);
}

function firstSafeM(zone: ResolvedZone, fromGear: number, fromM: number): number | null {
  const length = zone.slowestM - fromM;
  const count = Math.max(1, Math.ceil(length / SEARCH_STEP_M));
  for (let i = 0; i <= count; i++) {
    const sM = fromM + (length * i) / count;
    if (isSafe(zone, fromGear, sM)) return sM;
  }
  return null;
}

function isSafe(zone: ResolvedZone, fromGear: number, sM: number): boolean {
  const holds = rearUseDuringShift(zone, fromGear, sM, 1 - MOST_EASE / 100) <= 1;
  return holds && isSlowEnough(zone, fromGear, sM);
}

function isSlowEnough({ car, curve }: ResolvedZone, fromGear: number, sM: number): boolean {
  return curve.speedMps(sM) <= overRevSpeedMps(car.gearbox, fromGear - 1);
}

/** Grip the rear axle uses with the lower gear's engine braking and the engine still being dragged up to speed. */
function rearUseDuringShift(
  zone: ResolvedZone,
  fromGear: number,
  sM: number,
  brakeShare: number,
): number {
  const { car, axles, road, curve } = zone;
  const speedMps = curve.speedMps(sM);
  const drag = unmatchedShiftN(car.gearbox, car.engine, {
    fromGear,
    toGear: fromGear - 1,
    speedMps,
    overS: car.gearbox.shiftS,
  });
  const engineN = engineBrakingInGearN(car, fromGear - 1, speedMps) + drag;
  const brakeForceN = curve.brakeForceN(sM) * brakeShare;
  const lateLoadN = zone.lateLoadN?.(sM) ?? 0;
  return axleUse(axles, road, { sM, speedMps, brakeForceN, engineN, lateLoadN }).rear;
}
