import { lbfFromNewtons, newtonsFromLbf } from '../units.ts';
import type { Car, PedalFeel } from './car.ts';
import { straightLimit } from './straight-limit.ts';

/** The brake pedal in front of the driver, as far as it is known. */
export interface RigPedal extends PedalFeel {
  /** Force at full scale; null where the sensor was never put under known loads. */
  readonly peakN: number | null;
  readonly sensor: 'force' | 'pressure' | 'travel' | 'unknown';
  /** Share of the pedal's range that reads as nothing. */
  readonly deadShare: number;
  readonly hasWheel: boolean;
}

type MatchVerdict = 'close' | 'fair' | 'too light' | 'too heavy' | 'unknown';

/** One property of the pedal, car against rig; in SI, null where not known. */
export interface FeelPair {
  readonly car: number | null;
  readonly rig: number | null;
}

export interface PedalMatch {
  readonly speedMps: number;
  /** Pedal force at the car's straight-line limit at that speed. */
  readonly carPeakN: number;
  readonly rigPeakN: number | null;
  readonly verdict: MatchVerdict;
  readonly travelM: FeelPair;
  readonly deadStrokeM: FeelPair;
  readonly stiffnessNpm: FeelPair;
  /** Where the rig's pedal moves another way than the car's; empty where alike or not known. */
  readonly movesOtherwise: readonly PedalDifference[];
  /** What this rig cannot teach, in sentences. */
  readonly cannotTeach: readonly string[];
}

/** A difference that a foot feels, seen from the car's pedal. */
type PedalDifference =
  | 'the car has a longer pedal'
  | 'the car has a shorter pedal'
  | 'the car has more dead stroke'
  | 'the car has less dead stroke'
  | 'the car has a softer pedal'
  | 'the car has a stiffer pedal';

/** A simulator pedal counts as good when its peak is within 50 to 100 lbf of the car's (common practice, no source). */
export const CLOSE_LBF = 50;
export const FAIR_LBF = 100;

/** Compares the rig's pedal with what the car asks of a foot at a speed. */
export function matchPedal(car: Car, speedMps: number, rig: RigPedal): PedalMatch {
  const carPeakN = straightLimit(car, speedMps).pedalForceN;
  return {
    speedMps,
    carPeakN,
    rigPeakN: rig.peakN,
    verdict: verdictOf(carPeakN, rig.peakN),
    travelM: { car: car.pedal.travelM, rig: rig.travelM },
    deadStrokeM: { car: car.pedal.deadStrokeM, rig: deadStrokeOf(rig) },
    stiffnessNpm: { car: car.pedal.stiffnessNpm, rig: stiffnessOf(rig) },
    movesOtherwise: differences(car.pedal, rig),
    cannotTeach: cannotTeach(carPeakN, rig),
  };
}

/** What a foot tells apart: a quarter more travel, 3 mm of dead stroke, half as stiff again (common practice, no source). */
const TRAVEL_RATIO = 1.25;
const DEAD_STROKE_M = 0.003;
const STIFFNESS_RATIO = 1.5;

function differences(car: PedalFeel, rig: RigPedal): PedalDifference[] {
  const travel = ratioOf(car.travelM, rig.travelM);
  const stiffness = ratioOf(car.stiffnessNpm, stiffnessOf(rig));
  const rigDeadM = deadStrokeOf(rig);
  const deadM = car.deadStrokeM === null || rigDeadM === null ? 0 : car.deadStrokeM - rigDeadM;
  const found: (PedalDifference | false)[] = [
    travel > TRAVEL_RATIO && 'the car has a longer pedal',
    travel < 1 / TRAVEL_RATIO && 'the car has a shorter pedal',
    deadM > DEAD_STROKE_M && 'the car has more dead stroke',
    deadM < -DEAD_STROKE_M && 'the car has less dead stroke',
    stiffness < 1 / STIFFNESS_RATIO && 'the car has a softer pedal',
    stiffness > STIFFNESS_RATIO && 'the car has a stiffer pedal',
  ];
  return found.filter((one) => one !== false);
}

/** 1 where either is not known. */
function ratioOf(car: number | null, rig: number | null): number {
  return car === null || rig === null || rig === 0 ? 1 : car / rig;
}

function verdictOf(carN: number, rigN: number | null): MatchVerdict {
  if (rigN === null) return 'unknown';
  const apart = Math.abs(lbfFromNewtons(rigN - carN));
  if (apart <= CLOSE_LBF) return 'close';
  if (apart <= FAIR_LBF) return 'fair';
  return rigN < carN ? 'too light' : 'too heavy';
}

/** As measured, else the dead zone of the calibration over the measured travel. */
function deadStrokeOf({ deadStrokeM, deadShare, travelM }: RigPedal): number | null {
  return deadStrokeM ?? (travelM === null ? null : deadShare * travelM);
}

/** As measured, else peak force over the travel that is not dead. */
function stiffnessOf(rig: RigPedal): number | null {
  const dead = deadStrokeOf(rig);
  if (rig.stiffnessNpm !== null) return rig.stiffnessNpm;
  if (rig.peakN === null || rig.travelM === null || dead === null) return null;
  return dead < rig.travelM ? rig.peakN / (rig.travelM - dead) : null;
}

function cannotTeach(carPeakN: number, rig: RigPedal): string[] {
  return [
    ...sensorLimits(rig),
    ...(rig.peakN !== null && rig.peakN < carPeakN - newtonsFromLbf(FAIR_LBF)
      ? [
          'How hard the hit is: full scale here is far less than the car takes. Legs for it are trained elsewhere.',
        ]
      : []),
    ...(rig.hasWheel
      ? []
      : ['Release against steering: no wheel is connected, so this is braking only.']),
    'A servo, and what it does to the first millimetres: this pedal is as it is.',
    'A pedal that gets longer or harder with heat, and the car moving under you.',
  ];
}

const SENSOR_LIMITS: Readonly<Record<RigPedal['sensor'], readonly string[]>> = {
  force: ['Where the pedal is: a force sensor knows the load and not the travel.'],
  pressure: ['Where the pedal is: a pressure sensor knows the load and not the travel.'],
  travel: ['Force: the sensor measures travel, so it teaches when and how quickly, not how hard.'],
  unknown: [
    'Force, for all it says: what the sensor measures is not known. `ebbline rig setup` asks.',
  ],
};

function sensorLimits({ sensor, peakN }: RigPedal): readonly string[] {
  const uncalibrated =
    peakN === null && (sensor === 'force' || sensor === 'pressure')
      ? [
          'Newtons: the pedal was never put under known loads, so levels are shares of its own full scale.',
        ]
      : [];
  return [...SENSOR_LIMITS[sensor], ...uncalibrated];
}
