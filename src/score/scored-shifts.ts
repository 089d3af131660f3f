import { brakeForcesN } from '../car/brake-force.ts';
import type { LiveEvent } from '../live/live-event.ts';
import type { LiveRun } from '../live/live-run.ts';
import { stepAtPlace } from '../live/run-steps.ts';
import { earliestSafeM } from '../target/derive/downshifts.ts';
import type { ScoredShift } from './live-measures.ts';
import { LATE_SHIFT_S } from './live-score-version.ts';

type Downshift = Extract<LiveEvent, { kind: 'downshift' | 'upshift' }>;

/**
 * The driver's downshifts against the places where each was safe at the speed the car really had, with the grip it
 * really had. Shifts that the program makes are not judged.
 *
 * @param fromM where braking began
 */
export function scoredShifts(run: LiveRun, fromM: number): ScoredShift[] {
  const shifts = run.end.events.filter(
    (event): event is Downshift => event.kind === 'downshift' && event.byDriver,
  );
  const window = safeWindow(run);
  return shifts.map((shift, i) => {
    const earliestM = window(shift.fromGear, shifts[i - 1]?.atM ?? fromM);
    const { fromGear, toGear, atM, rpm } = shift;
    return { fromGear, toGear, atM, earliestM, rpm, verdict: verdictOf(run, shift, earliestM) };
  });
}

/** Downshifts of the target that the driver left out; 0 where the program shifts. */
export function missedDownshifts({ zone, end }: LiveRun): number {
  if (!zone.controls.paddles) return 0;
  return Math.max(0, end.gear - zone.corner.gears.slowest);
}

function verdictOf(
  run: LiveRun,
  { atM, atS, overRev, rearUse, toGear }: Downshift,
  earliestM: number | null,
): ScoredShift['verdict'] {
  if (overRev) return 'over-rev';
  if (rearUse > 1) return 'too early';
  const planned = run.zone.derived.zone.downshifts.find((shift) => shift.toGear === toGear);
  const firstM = Math.max(earliestM ?? atM, planned?.atM ?? atM);
  const passed = stepAtPlace(run, firstM);
  const isLate = passed !== null && atS - run.columns.timeS[passed]! > LATE_SHIFT_S;
  return isLate ? 'late' : 'safe';
}

/** The earliest safe place from a place on, from the car's own speed and brakes. */
function safeWindow(run: LiveRun): (fromGear: number, fromM: number) => number | null {
  const { columns, zone } = run;
  const { car } = zone;
  const stepAt = (sM: number): number => stepAtPlace(run, sM) ?? columns.placeM.length - 1;
  const curve = {
    speedMps: (sM: number) => columns.speedMps[stepAt(sM)]!,
    brakeForceN: (sM: number) => {
      const forces = brakeForcesN(
        car.brakes,
        columns.level[stepAt(sM)]! * car.fullScalePedalForceN,
      );
      return forces.front + forces.rear;
    },
  };
  const driven = {
    car,
    corner: { ...zone.corner, gripShare: 1 },
    curve,
    slowestM: zone.derived.zone.slowestM,
  };
  return (fromGear, fromM) => earliestSafeM(driven, fromGear, fromM);
}
