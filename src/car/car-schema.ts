import type { Schema } from '../profile/schema.ts';
import { group, oneLine, someLines } from '../profile/schema-parts.ts';
import { BRAKES_SCHEMA } from './brakes-schema.ts';
import { CAR_OVERRIDE_PROPERTIES } from './car-overrides.ts';
import { allOf, from, over, share } from './schema-numbers.ts';
import { USUAL_WHEEL } from './wheel.ts';

const TYRE_KEYS: Record<string, Schema> = {
  rolling_radius_m: over(0, 0.6, 'Radius of the loaded, rolling wheel'),
  longitudinal_friction: over(0, 3, 'Friction along the car at the reference load'),
  lateral_friction: over(0, 3, 'Friction across the car at the reference load'),
  reference_load_n: over(0, 20_000, 'Load of one tyre at which the frictions hold'),
  load_sensitivity: from(
    -0.4,
    0,
    'Relative change of friction for a doubling of the reference load, about -0.05 to -0.15',
  ),
  wheel_inertia_kgm2: {
    ...over(0, 10, 'One wheel with tyre, disc and hub about its axis'),
    default: USUAL_WHEEL.inertiaKgm2,
  },
  sliding_share: {
    ...over(0.3, 1, 'Friction of the locked tyre over the most it gives, 0.75 to 0.95'),
    default: USUAL_WHEEL.slidingShare,
  },
};

const TYRE = group(
  TYRE_KEYS,
  Object.keys(TYRE_KEYS).filter((key) => !('default' in (TYRE_KEYS[key] as Schema))),
);

const TYRES = allOf({
  front: TYRE,
  rear: TYRE,
  rolling_resistance: from(0, 0.1, 'Rolling resistance as a share of the weight'),
  states: {
    type: 'array',
    description: 'Named states of wear; the first one is the usual',
    minItems: 1,
    maxItems: 10,
    items: allOf({
      name: oneLine('Name of the state', 20),
      factor: over(0, 1.5, 'On the friction of all tyres'),
    }),
  },
  grip_over_temperature: {
    type: 'array',
    description: 'Factor on the friction over the temperature of the tyre, joined smoothly',
    minItems: 1,
    maxItems: 20,
    items: allOf({
      tyre_c: CAR_OVERRIDE_PROPERTIES.tyre_c,
      factor: over(0, 1.5, 'On the friction of all tyres'),
    }),
  },
});

function torqueCurve(description: string): Schema {
  return {
    type: 'array',
    description,
    minItems: 1,
    maxItems: 30,
    items: allOf({
      rpm: from(0, 25_000, 'Engine speed'),
      torque_nm: from(0, 3000, 'Torque at the crankshaft'),
    }),
  };
}

const GEARBOX = allOf({
  ratios: {
    type: 'array',
    description: 'Ratio by gear, first gear first, falling',
    minItems: 1,
    maxItems: 12,
    items: over(0, 20, 'Ratio'),
  },
  final_drive: over(0, 20, 'Ratio of the final drive, primary drive included'),
  efficiency: over(0, 1, 'Share of the power that passes'),
  rev_limit_rpm: over(0, 25_000, 'Highest engine speed'),
  shift_s: over(0, 3, 'Time a downshift takes'),
  blip: {
    type: 'boolean',
    description: 'The engine is brought up to speed before the clutch closes',
  },
  front_drive_share: share('Share of the drive on the front axle, 0 rear-driven, 1 front-driven'),
});

const PROPERTIES: Record<string, Schema> = {
  name: oneLine('Name shown to the driver', 40),
  kind: oneLine('Kind of car, for example touring', 30),
  notes: someLines('What a driver should know of the car', 600),
  mass_kg: over(100, 4000, 'On the scales, with driver and the fuel of fuel.mass_kg'),
  rotating_share: from(0, 0.3, 'Rotating inertia as a share of the mass, 0.03 to 0.10'),
  wheelbase_m: over(1, 6, 'Front to rear axle'),
  cg_to_rear_axle_m: over(0, 6, 'Centre of gravity to the rear axle'),
  cg_height_m: over(0, 1.5, 'Height of the centre of gravity'),
  track_m: over(0.5, 3, 'Mean of front and rear track'),
  fuel: allOf({
    mass_kg: from(0, 200, 'Fuel on board, part of the mass'),
    behind_front_axle_m: from(0, 6, 'Place of the tank'),
    height_m: from(0, 1.5, 'Height of the tank'),
  }),
  aero: allOf({
    drag_area_m2: from(0, 5, 'Drag coefficient times area'),
    downforce_area_m2: from(-1, 12, 'Downforce coefficient times area, positive pressing down'),
    front_share: share('Share of the downforce on the front axle'),
    air_density_kgpm3: over(0.5, 1.6, 'Density of the air'),
  }),
  tyres: TYRES,
  brakes: BRAKES_SCHEMA,
  driver: allOf({
    rise_s: over(0, 2, 'From nothing to the first application'),
    peak_pedal_force_n: over(0, 3000, 'Most the driver can push'),
    release_n_per_s: over(0, 50_000, 'Fastest release that is no lift-off'),
  }),
  pedal: group({
    travel_mm: over(0, 200, 'Travel at full force'),
    dead_stroke_mm: from(0, 100, 'Travel before the pads touch'),
    stiffness_n_per_mm: over(0, 2000, 'Stiffness after the dead stroke'),
  }),
  full_scale_pedal_force_n: over(0, 5000, 'Pedal force that level 1 stands for'),
  pitch_hz: from(1.5, 3, 'Natural frequency of the pitch motion'),
  steering: allOf({
    ratio: over(1, 40, 'Steering wheel angle over road wheel angle'),
    understeer_deg_per_g: from(-5, 10, 'Extra road wheel angle, positive understeers'),
  }),
  gearbox: GEARBOX,
  engine: allOf({
    torque: torqueCurve('Full throttle over engine speed'),
    braking_torque: torqueCurve('Closed throttle over engine speed, as positive numbers'),
    inertia_kgm2: from(0, 5, 'Inertia of what turns with the engine'),
  }),
  hybrid: allOf({
    rear_torque_nm: over(0, 5000, 'Largest torque at the rear axle'),
    power_kw: over(0, 1000, 'Largest power taken up'),
    fade_from_kmh: over(0, 400, 'Speed below which it fades'),
    fade_out_kmh: from(0, 400, 'Speed at which nothing is left of it'),
  }),
  start: allOf({
    disc_front_c: CAR_OVERRIDE_PROPERTIES.disc_front_c,
    disc_rear_c: CAR_OVERRIDE_PROPERTIES.disc_rear_c,
    pad_front_c: CAR_OVERRIDE_PROPERTIES.pad_front_c,
    pad_rear_c: CAR_OVERRIDE_PROPERTIES.pad_rear_c,
    tyre_c: CAR_OVERRIDE_PROPERTIES.tyre_c,
    air_c: CAR_OVERRIDE_PROPERTIES.air_c,
  }),
};

const OPTIONAL = new Set(['notes', 'pedal', 'full_scale_pedal_force_n', 'hybrid']);

/** The schema of car files, published as profiles/schema/car.schema.json. */
export const CAR_SCHEMA: Schema = {
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'Car',
  description: 'A car as far as its braking zones need it',
  ...group(
    PROPERTIES,
    Object.keys(PROPERTIES).filter((key) => !OPTIONAL.has(key)),
  ),
};
