import { CAR_OVERRIDE_PROPERTIES } from '../car/car-overrides.ts';
import type { Schema } from '../profile/schema.ts';
import { group, oneLine, someLines } from '../profile/schema-parts.ts';
import { CALL_WORDS } from './call-word.ts';
import { LINE_KINDS } from './line.ts';

const LONGEST_M = 1500;

function above(least: number, maximum: number, description: string): Schema {
  return { type: 'number', description, exclusiveMinimum: least, maximum };
}

function between(minimum: number, maximum: number, description: string): Schema {
  return { type: 'number', description, minimum, maximum };
}

const radius = (description: string): Schema => between(4, 1000, description);
const length = (description: string): Schema => above(0, 500, description);
const place = (description: string): Schema =>
  between(-LONGEST_M, LONGEST_M, `${description}, metres before the apex`);
const gear = (description: string): Schema => ({
  type: 'integer',
  description,
  minimum: 1,
  maximum: 12,
});

const LINE: Schema = group(
  {
    entry: {
      enum: [...LINE_KINDS, 'constant-radius'],
      default: 'smooth-apex',
      description:
        'How the line goes in and through; constant-radius is refused, because the brake has no taper on it',
    },
    turn_deg: above(0, 360, 'Angle turned from straight to straight; of a chicane its first turn'),
    radius_m: radius('Radius at the apex; the first one of a line with two'),
    entry_length_m: length('Turn-in to the first radius'),
    exit_length_m: length('Last radius to the straight'),
    first_arc_deg: between(0, 360, 'Angle on the first radius, transitions aside'),
    between_length_m: length('First radius to second radius'),
    between_radius_m: radius('Widest radius between two apexes'),
    second_radius_m: radius('Second radius'),
    second_turn_deg: above(0, 360, 'Second turn of a chicane, the other way'),
  },
  ['turn_deg', 'radius_m'],
);

const GEARS: Schema = group(
  {
    approach: gear('Gear at the brake point'),
    slowest: gear('Gear at the slowest point'),
    shifts_before_apex_m: {
      type: 'array',
      description: 'A place for each downshift; without it each comes as early as is safe',
      minItems: 1,
      maxItems: 11,
      items: place('Downshift'),
    },
  },
  ['approach', 'slowest'],
);

const APPROACH: Record<string, Schema> = {
  approach_speed_kmh: above(0, 500, 'Speed at the brake point'),
  approach_length_m: above(0, LONGEST_M, 'Straight before turn-in that may be used for braking'),
  grip_share: { ...between(0.3, 1, 'Share of the grip to use'), default: 1 },
  gears: GEARS,
};

const VARIANT: Schema = group(
  {
    variant: oneLine('Name, for example qualifying, race, wet or defending', 20),
    note: someLines('One sentence for the driver', 200),
    call: { enum: CALL_WORDS, description: 'Late call that asks for this variant' },
    line_factor: {
      ...between(0.4, 1.5, 'All radii and lengths of the line times this; below 1 is tighter'),
      default: 1,
    },
    ...APPROACH,
    ...CAR_OVERRIDE_PROPERTIES,
  },
  ['variant'],
);

function road(key: string, value: Schema, description: string): Schema {
  const items = group({ before_apex_m: place('Place'), [key]: value }, ['before_apex_m', key]);
  return { type: 'array', description, minItems: 1, maxItems: 50, items };
}

const BUMP: Schema = group(
  {
    before_apex_m: place('Start of the bump'),
    length_m: above(0, 100, 'Length of the bump'),
    load_loss_share: above(0, 1, 'Deepest loss of wheel load'),
  },
  ['before_apex_m', 'length_m', 'load_loss_share'],
);

const COACH_MARK: Schema = group(
  { before_apex_m: place('Mark'), word: oneLine("The coach's own word for it", 16) },
  ['before_apex_m', 'word'],
);

/** The schema of corner sheets, published as profiles/schema/corner.schema.json. */
export const CORNER_SCHEMA: Schema = {
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'Corner sheet',
  description: 'One braking zone with its corner: geometry, speeds, bumps, gears and variants',
  ...group(
    {
      name: oneLine('Name shown to the driver', 40),
      corner_type: oneLine('Kind of corner, for example hairpin', 30),
      advice: someLines('One or two sentences of the coach for the driver', 400),
      direction: { enum: ['left', 'right'], description: 'Of a chicane its first turn' },
      line: LINE,
      ...APPROACH,
      slope: road(
        'slope_percent',
        between(-30, 30, 'Slope, uphill positive'),
        'Slope along the road, joined by a smooth curve',
      ),
      bank: road(
        'bank_percent',
        between(-30, 70, 'Bank, positive where it helps'),
        'Bank along the road, joined by a smooth curve',
      ),
      bumps: { type: 'array', description: 'Bumps and crests', maxItems: 20, items: BUMP },
      coach_mark: { ...COACH_MARK, description: 'What the coach looks for beside the road' },
      variants: {
        type: 'array',
        description: 'Ways to drive it; the first is taken where none is named',
        minItems: 1,
        maxItems: 12,
        items: VARIANT,
      },
    },
    [
      'name',
      'corner_type',
      'direction',
      'line',
      'approach_speed_kmh',
      'approach_length_m',
      'gears',
      'variants',
    ],
  ),
};
