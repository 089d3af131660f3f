import type { Schema } from '../profile/schema.ts';
import { group } from '../profile/schema-parts.ts';
import { CAR_OVERRIDE_PROPERTIES, temperature } from './car-overrides.ts';
import { allOf, from, over, share } from './schema-numbers.ts';

const PADS: Schema = {
  type: 'array',
  description: 'Pad friction over the temperature of the disc, joined by a monotone cubic',
  minItems: 1,
  maxItems: 20,
  items: allOf({
    disc_c: temperature('Temperature of the disc'),
    friction: over(0, 1.2, 'Friction of pad on disc'),
  }),
};

const DISC = allOf({
  mass_kg: over(0, 50, 'One disc'),
  specific_heat_jpkgk: over(100, 3000, 'Cast iron 420 to 540, steel 480, hot carbon 1300 to 1800'),
  cooling_area_m2: over(0, 2, 'Surface that meets the air'),
  cooling_at_rest_wpm2k: from(0, 100, 'Heat transfer of the standing disc'),
  cooling_per_radps_wpm2k: from(0, 10, 'Heat transfer gained per rad/s of wheel speed'),
  heat_share: over(0, 1, 'Share of the heat that goes into the disc, 0.9 to 0.99'),
});

const AXLE_KEYS: Record<string, Schema> = {
  master_cylinder_mm: over(5, 50, 'Bore of the master cylinder'),
  pistons_mm: {
    type: 'array',
    description: 'Pistons of ONE side of an opposed caliper, or the piston of a sliding one',
    minItems: 1,
    maxItems: 6,
    items: over(5, 100, 'Diameter of a piston'),
  },
  effective_radius_m: over(0, 0.4, 'Radius at which the pads act'),
  pad_inner_radius_m: over(0, 0.4, 'Inner edge of the pads'),
  pad_outer_radius_m: over(0, 0.4, 'Outer edge of the pads'),
  pads: PADS,
  disc: DISC,
};

/** Effective radius or both pad radii; that it is not all three is a rule beside the schema. */
const AXLE = group(AXLE_KEYS, ['master_cylinder_mm', 'pistons_mm', 'pads', 'disc']);

const ANTI_LOCK_AXLE = allOf({
  release_at_use: over(0.5, 1.2, 'Use of grip at which pressure is taken away, 1 is the limit'),
  reapply_at_use: over(0.3, 1.2, 'Use of grip under which it is given back'),
});

const KEYS: Record<string, Schema> = {
  pedal_ratio: over(1, 12, 'Push-rod force over pedal force'),
  pedal_efficiency: over(0.5, 1, 'Share of the push-rod force that arrives, 0.8 to 1'),
  balance_bar_front: CAR_OVERRIDE_PROPERTIES.balance_bar_front,
  push_out_bar: from(0, 5, 'Line pressure at which the pads touch'),
  front: AXLE,
  rear: AXLE,
  rear_valve: allOf({
    knee_bar: over(0, 200, 'Rear line pressure from which the valve holds back'),
    slope: share('Share of the pressure above the knee that passes'),
  }),
  anti_lock: allOf({
    front: ANTI_LOCK_AXLE,
    rear: ANTI_LOCK_AXLE,
    release_per_s: over(0, 100, 'Share of the pressure taken away per second'),
    reapply_per_s: over(0, 100, 'Share of the pressure given back per second'),
  }),
};

/** The hydraulics; without `rear_valve` and `anti_lock` there are none. */
export const BRAKES_SCHEMA: Schema = group(
  KEYS,
  Object.keys(KEYS).filter((key) => key !== 'rear_valve' && key !== 'anti_lock'),
);
