import { pascalsFromBar } from '../units.ts';
import type { AntiLock, AntiLockAxle } from './anti-lock.ts';
import { type AxleBrake, type Brakes, circleAreaM2, uniformPressureRadiusM } from './brakes.ts';
import type { PadCurve, PerAxle } from './car.ts';
import type { AntiLockAxleFile, AxleBrakeFile, BrakesFile } from './car-file.ts';
import type { Disc } from './disc-heat.ts';

/** Hydraulics and anti-lock of a file in SI, the pad friction as in the first line of each curve. */
export function brakesOfFile(
  file: BrakesFile,
  wheelRadiusM: PerAxle<number>,
): { readonly brakes: Brakes; readonly antiLock: AntiLock | null } {
  const { rear_valve: valve } = file;
  return {
    brakes: {
      pedalRatio: file.pedal_ratio,
      pedalEfficiency: file.pedal_efficiency,
      balanceBarFront: file.balance_bar_front,
      pushOutPa: pascalsFromBar(file.push_out_bar),
      rearValve:
        valve === undefined ? null : { kneePa: pascalsFromBar(valve.knee_bar), slope: valve.slope },
      front: axleBrakeOf(file.front, wheelRadiusM.front),
      rear: axleBrakeOf(file.rear, wheelRadiusM.rear),
    },
    antiLock: antiLockOf(file),
  };
}

function axleBrakeOf(file: AxleBrakeFile, wheelRadiusM: number): AxleBrake {
  return {
    masterCylinderAreaM2: circleAreaM2(file.master_cylinder_mm / 1000),
    pistonAreaM2: file.pistons_mm.reduce((area, mm) => area + circleAreaM2(mm / 1000), 0),
    padFriction: (file.pads[0] as { friction: number }).friction,
    effectiveRadiusM:
      file.effective_radius_m ??
      // The rules beside the schema let one of the two ways through.
      uniformPressureRadiusM(file.pad_inner_radius_m as number, file.pad_outer_radius_m as number),
    wheelRadiusM,
  };
}

export function padCurveOfFile({ pads }: AxleBrakeFile): PadCurve {
  return pads.map(({ disc_c, friction }) => ({ discC: disc_c, friction }));
}

export function discOfFile({ disc }: AxleBrakeFile): Disc {
  return {
    massKg: disc.mass_kg,
    specificHeatJpkgK: disc.specific_heat_jpkgk,
    coolingAreaM2: disc.cooling_area_m2,
    coolingAtRestWpm2K: disc.cooling_at_rest_wpm2k,
    coolingPerRadpsWpm2K: disc.cooling_per_radps_wpm2k,
    heatShare: disc.heat_share,
  };
}

function antiLockOf({ anti_lock: file }: BrakesFile): AntiLock | null {
  if (file === undefined) return null;
  return {
    front: antiLockAxleOf(file.front),
    rear: antiLockAxleOf(file.rear),
    releasePerS: file.release_per_s,
    reapplyPerS: file.reapply_per_s,
  };
}

function antiLockAxleOf(file: AntiLockAxleFile): AntiLockAxle {
  return { releaseAtUse: file.release_at_use, reapplyAtUse: file.reapply_at_use };
}
