import type { Schema } from '../profile/schema.ts';
import { group } from '../profile/schema-parts.ts';
import { type DomainKeys, positionIn } from './domain-keys.ts';

/** The tolerance around the curve. */
export function corridorSchema(keys: DomainKeys): Schema {
  const knot = group(
    {
      [keys.position]: positionIn(keys, 'Place of the knot'),
      half_width_level: {
        type: 'number',
        description: 'Half width there as a level',
        exclusiveMinimum: 0,
        maximum: 0.5,
      },
    },
    [keys.position, 'half_width_level'],
  );
  return group({
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
    knots: {
      type: 'array',
      description: 'Half widths along the curve, where they are more than floor and share',
      minItems: 2,
      maxItems: 50,
      items: knot,
    },
  });
}
