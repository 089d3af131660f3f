import type { Schema } from '../profile/schema.ts';
import { choiceBy, group } from '../profile/schema-parts.ts';
import { type DomainKeys, positionIn } from './domain-keys.ts';
import { RISE_SHAPES } from './rise-shape.ts';

const angle = (description: string): Schema => ({
  type: 'number',
  description,
  minimum: -1080,
  maximum: 1080,
});

/** The steering, told apart by its shape. */
export function steeringSchema(keys: DomainKeys): Schema {
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

/** The downshifts. */
export function gearsSchema(keys: DomainKeys): Schema {
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
