import type { Schema } from '../profile/schema.ts';
import { choiceBy, exactlyOne, group, oneLine, someLines } from '../profile/schema-parts.ts';
import { corridorSchema } from './corridor-schema.ts';
import { DISTANCE, type DomainKeys, lengthIn, positionIn, TIME } from './domain-keys.ts';
import { LEARNED_FROM_SCHEMA } from './learned-from-schema.ts';
import { bleedSchema, releaseSchema, riseSchema } from './phase-schemas.ts';
import { gearsSchema, steeringSchema } from './steering-schema.ts';

const speed = (unit: string, maximum: number): Schema => ({
  type: 'number',
  description: `Speed in ${unit}`,
  exclusiveMinimum: 0,
  maximum,
});

function speedKeys(name: string): Record<string, Schema> {
  return {
    [`${name}_kmh`]: speed('km/h', 500),
    [`${name}_mph`]: speed('mph', 310),
    [`${name}_mps`]: speed('m/s', 139),
  };
}

const FULL_SCALE: Schema = group({
  pedal_force_n: { type: 'number', exclusiveMinimum: 0, maximum: 5000 },
  pedal_force_kgf: { type: 'number', exclusiveMinimum: 0, maximum: 500 },
  pedal_force_lbf: { type: 'number', exclusiveMinimum: 0, maximum: 1100 },
  pressure_bar: { type: 'number', exclusiveMinimum: 0, maximum: 300 },
  pressure_psi: { type: 'number', exclusiveMinimum: 0, maximum: 4400 },
});

function commonProperties(keys: DomainKeys): Record<string, Schema> {
  return {
    name: oneLine('Name shown to the driver', 40),
    corner_type: oneLine('Kind of corner, for example hairpin', 30),
    advice: someLines('One or two sentences of the coach for the driver', 400),
    domain: { const: keys.domain, description: 'What the curve runs over' },
    rise: riseSchema(keys),
    peak_level: {
      type: 'number',
      description: 'Level of the peak',
      minimum: 0.1,
      maximum: 1,
    },
    [`hold_${keys.unit}`]: {
      type: 'number',
      description: 'Length of the plateau',
      minimum: 0,
      maximum: keys.longest,
      default: 0,
    },
    bleed: bleedSchema(keys),
    release: releaseSchema(keys),
    [`turn_in_${keys.unit}`]: positionIn(keys, 'Turn-in'),
    [`apex_${keys.unit}`]: positionIn(keys, 'Apex'),
    steering: steeringSchema(keys),
    gears: gearsSchema(keys),
    corridor: corridorSchema(keys),
    full_scale: FULL_SCALE,
    learned_from: LEARNED_FROM_SCHEMA,
  };
}

const ALWAYS = ['name', 'corner_type', 'domain', 'rise', 'peak_level', 'release'];

function distanceSchema(): Schema {
  const branch = group(
    {
      ...commonProperties(DISTANCE),
      ...speedKeys('entry_speed'),
      ...speedKeys('slowest_speed'),
      brake_point_m: lengthIn(DISTANCE, 'Start of the rise, metres to the slowest point'),
    },
    [...ALWAYS, 'brake_point_m'],
  );
  const oneUnit = (name: string): Schema => exactlyOne(...Object.keys(speedKeys(name)));
  return { ...branch, allOf: [oneUnit('entry_speed'), oneUnit('slowest_speed')] };
}

/** The schema of target files, published as profiles/schema/target.schema.json. */
export const TARGET_SCHEMA: Schema = {
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'Target',
  description: 'A brake curve to follow, against time or against distance to the slowest point',
  ...choiceBy('domain', [group(commonProperties(TIME), ALWAYS), distanceSchema()]),
};
