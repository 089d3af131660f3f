import type { Schema } from '../profile/schema.ts';
import { RISE_SHAPES } from './rise-shape.ts';

/** How the two domains name their positions and lengths, so that every key carries its unit. */
interface DomainKeys {
  readonly domain: 'time' | 'distance';
  readonly unit: 's' | 'm';
  readonly position: 'time_s' | 'distance_m';
  readonly length: 'duration_s' | 'length_m';
  /** What a position is, in words. */
  readonly from: string;
  readonly longest: number;
}

const TIME: DomainKeys = {
  domain: 'time',
  unit: 's',
  position: 'time_s',
  length: 'duration_s',
  from: 'Seconds after the start of the rise',
  longest: 20,
};

const DISTANCE: DomainKeys = {
  domain: 'distance',
  unit: 'm',
  position: 'distance_m',
  length: 'length_m',
  from: 'Metres to the slowest point',
  longest: 1000,
};

/** No control, format or separator characters, because the text goes to a terminal. */
const ONE_LINE = '^[^\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}]*$';
const SOME_LINES = '^(\\n|[^\\p{Cc}\\p{Cf}\\p{Zl}\\p{Zp}])*$';

function words(description: string, maxLength: number, pattern: string): Schema {
  return { type: 'string', description, minLength: 1, maxLength, pattern };
}

function group(properties: Record<string, Schema>, required: readonly string[] = []): Schema {
  return { type: 'object', properties, required, additionalProperties: false };
}

const level = (description: string): Schema => ({
  type: 'number',
  description,
  minimum: 0,
  maximum: 1,
});

const angle = (description: string): Schema => ({
  type: 'number',
  description,
  minimum: -1080,
  maximum: 1080,
});

const speed = (unit: string, maximum: number): Schema => ({
  type: 'number',
  description: `Speed in ${unit}`,
  exclusiveMinimum: 0,
  maximum,
});

function positionIn(keys: DomainKeys, what: string): Schema {
  const description = `${what}, ${keys.from.toLowerCase()}`;
  return { type: 'number', description, minimum: -keys.longest, maximum: keys.longest };
}

function lengthIn(keys: DomainKeys, description: string): Schema {
  return { type: 'number', description, exclusiveMinimum: 0, maximum: keys.longest };
}

/** One of several keys that say the same in different units; all absent is refused too unless `optional`. */
function exactlyOne(...names: string[]): Schema {
  return { oneOf: names.map((name) => ({ required: [name] })) };
}

function speedKeys(name: string): Record<string, Schema> {
  return {
    [`${name}_kmh`]: speed('km/h', 500),
    [`${name}_mph`]: speed('mph', 310),
    [`${name}_mps`]: speed('m/s', 139),
  };
}

function riseSchema(keys: DomainKeys): Schema {
  const shape = {
    enum: RISE_SHAPES,
    default: 'minimum-jerk',
    description: 'Shape of the initial application',
  };
  return group({ [keys.length]: lengthIn(keys, 'From zero to the peak'), shape }, [keys.length]);
}

function bleedSchema(keys: DomainKeys): Schema {
  return group(
    {
      [keys.length]: lengthIn(keys, 'Length of the straight-line bleed'),
      to_level: level('Level at its end, the start of release'),
    },
    [keys.length, 'to_level'],
  );
}

function levelKnot(keys: DomainKeys): Schema {
  return group(
    {
      [keys.position]: positionIn(keys, 'Place of the knot'),
      level: level('Level at the knot'),
    },
    [keys.position, 'level'],
  );
}

/** The extra keys of each release shape, all of them required. */
function shapeKeys(keys: DomainKeys): Record<string, Record<string, Schema>> {
  return {
    linear: {},
    'raised-cosine': {},
    'power-law': {
      exponent: {
        type: 'number',
        description: 'Above 1 quick first and gentle last',
        minimum: 0.3,
        maximum: 5,
      },
    },
    exponential: {
      e_folds: {
        type: 'number',
        description: 'How many times the level falls to 1/e over the release',
        minimum: 0.5,
        maximum: 8,
      },
    },
    'two-stage': { corner: levelKnot(keys) },
    knots: {
      knots: {
        type: 'array',
        description: 'Knots between the start of release and brake off',
        minItems: 1,
        maxItems: 50,
        items: levelKnot(keys),
      },
    },
  };
}

function releaseSchema(keys: DomainKeys): Schema {
  const own: Record<string, Schema> =
    keys.domain === 'time'
      ? { duration_s: lengthIn(keys, 'Start of release to brake off') }
      : { brake_off_m: { ...positionIn(keys, 'Brake off'), minimum: 0, default: 0 } };
  const needed = keys.domain === 'time' ? ['duration_s'] : [];
  const branches = Object.entries(shapeKeys(keys)).map(([shape, extra]) =>
    group({ shape: { const: shape }, ...own, ...extra }, [
      'shape',
      ...needed,
      ...Object.keys(extra),
    ]),
  );
  return choiceBy('shape', branches);
}

function choiceBy(propertyName: string, oneOf: readonly Schema[]): Schema {
  return { type: 'object', discriminator: { propertyName }, required: [propertyName], oneOf };
}

function steeringSchema(keys: DomainKeys): Schema {
  const knot = group(
    {
      [keys.position]: positionIn(keys, 'Place of the knot'),
      angle_deg: angle('Degrees at the wheel, left positive'),
    },
    [keys.position, 'angle_deg'],
  );
  const turn = group(
    {
      shape: { enum: RISE_SHAPES },
      angle_deg: angle('Degrees at the wheel at the apex, left positive'),
    },
    ['shape', 'angle_deg'],
  );
  const knots = group(
    {
      shape: { const: 'knots' },
      knots: { type: 'array', minItems: 2, maxItems: 50, items: knot },
    },
    ['shape', 'knots'],
  );
  return choiceBy('shape', [turn, knots]);
}

function gearsSchema(keys: DomainKeys): Schema {
  const gear: Schema = {
    type: 'integer',
    description: 'Gear after the shift',
    minimum: 1,
    maximum: 12,
  };
  return {
    type: 'array',
    description: 'Downshifts in the order in which they come',
    maxItems: 12,
    items: group({ [keys.position]: positionIn(keys, 'Shift'), gear }, [keys.position, 'gear']),
  };
}

const FULL_SCALE: Schema = group({
  pedal_force_n: { type: 'number', exclusiveMinimum: 0, maximum: 5000 },
  pedal_force_kgf: { type: 'number', exclusiveMinimum: 0, maximum: 500 },
  pedal_force_lbf: { type: 'number', exclusiveMinimum: 0, maximum: 1100 },
  pressure_bar: { type: 'number', exclusiveMinimum: 0, maximum: 300 },
  pressure_psi: { type: 'number', exclusiveMinimum: 0, maximum: 4400 },
});

const CORRIDOR: Schema = group({
  floor_level: {
    type: 'number',
    description: 'Smallest half width as a level',
    minimum: 0.005,
    maximum: 0.2,
    default: 0.015,
  },
  share: {
    type: 'number',
    description: 'Half width as a share of the level',
    minimum: 0,
    maximum: 0.5,
    default: 0.05,
  },
});

function commonProperties(keys: DomainKeys): Record<string, Schema> {
  return {
    name: words('Name shown to the driver', 40, ONE_LINE),
    corner_type: words('Kind of corner, for example hairpin', 30, ONE_LINE),
    advice: words('One or two sentences of the coach for the driver', 400, SOME_LINES),
    domain: { const: keys.domain, description: 'What the curve runs over' },
    rise: riseSchema(keys),
    peak_level: {
      type: 'number',
      description: 'Level of the peak',
      minimum: 0.1,
      maximum: 1,
    },
    [`hold_${keys.unit}`]: { ...lengthIn(keys, 'Length of the plateau'), default: 0 },
    bleed: bleedSchema(keys),
    release: releaseSchema(keys),
    [`turn_in_${keys.unit}`]: positionIn(keys, 'Turn-in'),
    [`apex_${keys.unit}`]: positionIn(keys, 'Apex'),
    steering: steeringSchema(keys),
    gears: gearsSchema(keys),
    corridor: CORRIDOR,
    full_scale: FULL_SCALE,
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
