import type { Schema } from '../profile/schema.ts';
import { choiceBy, group } from '../profile/schema-parts.ts';
import { type DomainKeys, lengthIn, levelIn, positionIn } from './domain-keys.ts';
import { RISE_SHAPES } from './rise-shape.ts';

const SQUEEZE: Schema = {
  ...group(
    {
      from_share: {
        type: 'number',
        description: 'Share of the peak at which the push ends',
        minimum: 0.1,
        maximum: 0.99,
      },
      after_share: {
        type: 'number',
        description: "Share of the rise's length that the push takes",
        minimum: 0.05,
        maximum: 0.95,
      },
      e_folds: {
        type: 'number',
        description: 'How many times what is missing to the peak falls to 1/e',
        minimum: 0.1,
        maximum: 12,
      },
    },
    ['from_share', 'after_share', 'e_folds'],
  ),
  description: 'The last part of the rise, squeezed on while load comes forward',
};

/** The initial application. */
export function riseSchema(keys: DomainKeys): Schema {
  const shape = {
    enum: RISE_SHAPES,
    default: 'minimum-jerk',
    description: 'Shape of the initial application',
  };
  const lengthKey = { [keys.length]: lengthIn(keys, 'From zero to the peak') };
  return group({ ...lengthKey, shape, squeeze: SQUEEZE }, [keys.length]);
}

/** The straight-line bleed. */
export function bleedSchema(keys: DomainKeys): Schema {
  return group(
    {
      [keys.length]: lengthIn(keys, 'Length of the straight-line bleed'),
      to_level: levelIn('Level at its end, the start of release'),
    },
    [keys.length, 'to_level'],
  );
}

function levelKnot(keys: DomainKeys): Schema {
  return group(
    {
      [keys.position]: positionIn(keys, 'Place of the knot'),
      level: levelIn('Level at the knot'),
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

/** The release, told apart by its shape. */
export function releaseSchema(keys: DomainKeys): Schema {
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
