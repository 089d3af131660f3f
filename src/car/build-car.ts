import { Problem } from '../problem.ts';
import { metresPerSecondFromKmh, radiansFromDegrees, STANDARD_GRAVITY_MPS2 } from '../units.ts';
import { brakesOfFile, discOfFile, padCurveOfFile } from './brakes-of-file.ts';
import type { Car, PerAxle } from './car.ts';
import type { CarFile, TorqueFile, TyreFile } from './car-file.ts';
import type { CarOverrides } from './car-overrides.ts';
import type { Chassis } from './chassis.ts';
import type { ElectricBraking } from './electric-braking.ts';
import { withFuel } from './fuel.ts';
import type { Gearbox, TorqueCurve } from './gearbox.ts';
import { startHeat, withHeat } from './heat-state.ts';
import { atTemperature } from './over-temperature.ts';
import type { Tyre } from './tyre.ts';
import { USUAL_WHEEL, type Wheel } from './wheel.ts';

const NO_OVERRIDES: CarOverrides = {};

/**
 * The car of a file with a variant's overrides, resolved to SI: fuel moves mass and centre of gravity, tyre state, tyre
 * temperature and grip factor scale the frictions, disc and pad temperatures set the pad friction.
 *
 * @throws Problem where the file does not know the tyre state
 */
export function buildCar(file: CarFile, overrides: CarOverrides = NO_OVERRIDES): Car {
  const { start, tyres, steering } = file;
  const tyreStartC = overrides.tyreStartC ?? start.tyre_c;
  const factor =
    (overrides.gripFactor ?? 1) * stateFactor(file, overrides) * warmth(file, tyreStartC);
  const car: Car = {
    id: file.id,
    name: file.name,
    chassis: chassisOf(file, overrides),
    trackM: file.track_m,
    aero: {
      dragAreaM2: file.aero.drag_area_m2,
      downforceAreaM2: file.aero.downforce_area_m2,
      frontShare: file.aero.front_share,
      airDensityKgpm3: file.aero.air_density_kgpm3,
    },
    tyres: { front: tyreOf(tyres.front, factor), rear: tyreOf(tyres.rear, factor) },
    wheels: { front: wheelOf(tyres.front), rear: wheelOf(tyres.rear) },
    rollingResistance: tyres.rolling_resistance,
    rotatingShare: file.rotating_share,
    ...brakesOf(file, overrides),
    tyreStartC,
    airC: overrides.airC ?? start.air_c,
    electric: overrides.batteryFull === true ? null : electricOf(file),
    gearbox: gearboxOf(file),
    engine: {
      driveTorque: torqueOf(file.engine.torque),
      brakingTorque: torqueOf(file.engine.braking_torque),
      inertiaKgm2: file.engine.inertia_kgm2,
    },
    frontDriveShare: file.gearbox.front_drive_share,
    driver: {
      riseS: file.driver.rise_s,
      peakPedalForceN: file.driver.peak_pedal_force_n,
      releaseNps: file.driver.release_n_per_s,
    },
    pedal: {
      travelM: scaled(file.pedal?.travel_mm, 1e-3),
      deadStrokeM: scaled(file.pedal?.dead_stroke_mm, 1e-3),
      stiffnessNpm: scaled(file.pedal?.stiffness_n_per_mm, 1e3),
    },
    pitchHz: file.pitch_hz,
    steeringRatio: steering.ratio,
    understeerRadpMps2: radiansFromDegrees(steering.understeer_deg_per_g) / STANDARD_GRAVITY_MPS2,
    fullScalePedalForceN: file.full_scale_pedal_force_n ?? file.driver.peak_pedal_force_n,
  };
  return withHeat(car, startHeat(car));
}

function stateFactor({ id, tyres: { states } }: CarFile, { tyreState }: CarOverrides): number {
  if (tyreState === undefined) return (states[0] as { factor: number }).factor;
  const state = states.find(({ name }) => name === tyreState);
  if (state !== undefined) return state.factor;
  throw new Problem(`the car knows no tyre state ${JSON.stringify(tyreState)}`, {
    where: id,
    next: `Use one of ${states.map(({ name }) => name).join(', ')}, or add it to the car's file.`,
  });
}

function warmth({ tyres }: CarFile, tyreC: number): number {
  const curve = tyres.grip_over_temperature.map((point) => ({
    atC: point.tyre_c,
    value: point.factor,
  }));
  return atTemperature(curve, tyreC);
}

function chassisOf(file: CarFile, { fuelKg }: CarOverrides): Chassis {
  const weighed: Chassis = {
    massKg: file.mass_kg,
    cgToFrontM: file.wheelbase_m - file.cg_to_rear_axle_m,
    cgToRearM: file.cg_to_rear_axle_m,
    cgHeightM: file.cg_height_m,
    frontWheelRadiusM: file.tyres.front.rolling_radius_m,
    rearWheelRadiusM: file.tyres.rear.rolling_radius_m,
  };
  if (fuelKg === undefined) return weighed;
  const { mass_kg, behind_front_axle_m, height_m } = file.fuel;
  const fuel = { massKg: mass_kg, behindFrontAxleM: behind_front_axle_m, heightM: height_m };
  return withFuel(weighed, fuel, fuelKg);
}

function tyreOf(tyre: TyreFile, factor: number): Tyre {
  return {
    longitudinalFriction: tyre.longitudinal_friction * factor,
    lateralFriction: tyre.lateral_friction * factor,
    referenceLoadN: tyre.reference_load_n,
    loadSensitivity: tyre.load_sensitivity,
  };
}

function wheelOf({ wheel_inertia_kgm2, sliding_share }: TyreFile): Wheel {
  return {
    inertiaKgm2: wheel_inertia_kgm2 ?? USUAL_WHEEL.inertiaKgm2,
    slidingShare: sliding_share ?? USUAL_WHEEL.slidingShare,
  };
}

/** Everything about the brakes, the pad friction still as in the first line of each curve. */
function brakesOf(
  { brakes, tyres, start }: CarFile,
  overrides: CarOverrides,
): Pick<Car, 'brakes' | 'discs' | 'padCurves' | 'discStartC' | 'padStartC' | 'antiLock'> {
  const radii = { front: tyres.front.rolling_radius_m, rear: tyres.rear.rolling_radius_m };
  const resolved = brakesOfFile(brakes, radii);
  const disc: PerAxle<number> = { front: start.disc_front_c, rear: start.disc_rear_c };
  const pad: PerAxle<number> = { front: start.pad_front_c, rear: start.pad_rear_c };
  return {
    brakes: {
      ...resolved.brakes,
      balanceBarFront: overrides.balanceBarFront ?? brakes.balance_bar_front,
    },
    antiLock: resolved.antiLock,
    discs: { front: discOfFile(brakes.front), rear: discOfFile(brakes.rear) },
    padCurves: { front: padCurveOfFile(brakes.front), rear: padCurveOfFile(brakes.rear) },
    discStartC: { ...disc, ...overrides.discStartC },
    padStartC: { ...pad, ...overrides.padStartC },
  };
}

function electricOf({ hybrid }: CarFile): ElectricBraking | null {
  if (hybrid === undefined) return null;
  return {
    torqueNm: hybrid.rear_torque_nm,
    powerW: hybrid.power_kw * 1e3,
    fadeFromMps: metresPerSecondFromKmh(hybrid.fade_from_kmh),
    fadeOutMps: metresPerSecondFromKmh(hybrid.fade_out_kmh),
  };
}

function gearboxOf({ gearbox, tyres }: CarFile): Gearbox {
  const driven = gearbox.front_drive_share > 0.5 ? tyres.front : tyres.rear;
  return {
    ratios: gearbox.ratios,
    finalDrive: gearbox.final_drive,
    efficiency: gearbox.efficiency,
    drivenWheelRadiusM: driven.rolling_radius_m,
    revLimitRpm: gearbox.rev_limit_rpm,
    shiftS: gearbox.shift_s,
    blip: gearbox.blip,
  };
}

function torqueOf(points: readonly TorqueFile[]): TorqueCurve {
  return points.map(({ rpm, torque_nm }) => ({ rpm, torqueNm: torque_nm }));
}

function scaled(value: number | undefined, factor: number): number | null {
  return value === undefined ? null : value * factor;
}
