/** A car file as the schema lets it through, keys and units as people write them, with the id its name gives it. */
export interface CarFile extends CarFileKeys {
  /** File name without its ending. */
  readonly id: string;
}

export interface CarFileKeys {
  readonly name: string;
  readonly kind: string;
  readonly notes?: string;
  /** As it stands on the scales, driver and `fuel.mass_kg` included. */
  readonly mass_kg: number;
  readonly rotating_share: number;
  readonly wheelbase_m: number;
  readonly cg_to_rear_axle_m: number;
  readonly cg_height_m: number;
  readonly track_m: number;
  readonly fuel: {
    readonly mass_kg: number;
    readonly behind_front_axle_m: number;
    readonly height_m: number;
  };
  readonly aero: {
    readonly drag_area_m2: number;
    readonly downforce_area_m2: number;
    readonly front_share: number;
    readonly air_density_kgpm3: number;
  };
  readonly tyres: {
    readonly front: TyreFile;
    readonly rear: TyreFile;
    readonly rolling_resistance: number;
    readonly states: readonly { readonly name: string; readonly factor: number }[];
    readonly grip_over_temperature: readonly { readonly tyre_c: number; readonly factor: number }[];
  };
  readonly brakes: BrakesFile;
  readonly driver: {
    readonly rise_s: number;
    readonly peak_pedal_force_n: number;
    readonly release_n_per_s: number;
  };
  readonly pedal?: {
    readonly travel_mm?: number;
    readonly dead_stroke_mm?: number;
    readonly stiffness_n_per_mm?: number;
  };
  /** The driver's peak force where it is left out. */
  readonly full_scale_pedal_force_n?: number;
  readonly pitch_hz: number;
  readonly steering: { readonly ratio: number; readonly understeer_deg_per_g: number };
  readonly gearbox: {
    readonly ratios: readonly number[];
    readonly final_drive: number;
    readonly efficiency: number;
    readonly rev_limit_rpm: number;
    readonly shift_s: number;
    readonly blip: boolean;
    readonly front_drive_share: number;
  };
  readonly engine: {
    readonly torque: readonly TorqueFile[];
    readonly braking_torque: readonly TorqueFile[];
    readonly inertia_kgm2: number;
  };
  readonly hybrid?: {
    readonly rear_torque_nm: number;
    readonly power_kw: number;
    readonly fade_from_kmh: number;
    readonly fade_out_kmh: number;
  };
  readonly start: {
    readonly disc_front_c: number;
    readonly disc_rear_c: number;
    readonly pad_front_c: number;
    readonly pad_rear_c: number;
    readonly tyre_c: number;
    readonly air_c: number;
  };
}

export interface TyreFile {
  readonly rolling_radius_m: number;
  readonly longitudinal_friction: number;
  readonly lateral_friction: number;
  readonly reference_load_n: number;
  readonly load_sensitivity: number;
  /** `USUAL_WHEEL` where left out, like the next. */
  readonly wheel_inertia_kgm2?: number;
  readonly sliding_share?: number;
}

export interface TorqueFile {
  readonly rpm: number;
  readonly torque_nm: number;
}

export interface BrakesFile {
  readonly pedal_ratio: number;
  readonly pedal_efficiency: number;
  readonly balance_bar_front: number;
  readonly push_out_bar: number;
  readonly front: AxleBrakeFile;
  readonly rear: AxleBrakeFile;
  readonly rear_valve?: { readonly knee_bar: number; readonly slope: number };
  readonly anti_lock?: {
    readonly front: AntiLockAxleFile;
    readonly rear: AntiLockAxleFile;
    readonly release_per_s: number;
    readonly reapply_per_s: number;
  };
}

export interface AntiLockAxleFile {
  readonly release_at_use: number;
  readonly reapply_at_use: number;
}

export interface AxleBrakeFile {
  readonly master_cylinder_mm: number;
  /** Of one side of an opposed caliper, or the piston of a sliding one. */
  readonly pistons_mm: readonly number[];
  readonly effective_radius_m?: number;
  readonly pad_inner_radius_m?: number;
  readonly pad_outer_radius_m?: number;
  readonly pads: readonly { readonly disc_c: number; readonly friction: number }[];
  readonly disc: {
    readonly mass_kg: number;
    readonly specific_heat_jpkgk: number;
    readonly cooling_area_m2: number;
    readonly cooling_at_rest_wpm2k: number;
    readonly cooling_per_radps_wpm2k: number;
    readonly heat_share: number;
  };
}
