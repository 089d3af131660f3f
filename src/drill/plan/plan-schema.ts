import type { Schema } from '../../profile/schema.ts';
import { choiceBy, exactlyOne, group, oneLine, someLines } from '../../profile/schema-parts.ts';
import { PLAN_DEFAULTS } from './plan-defaults.ts';
import { ORDERS } from './practice-plan.ts';

const count = (description: string, minimum: number, maximum: number, usual?: number): Schema =>
  withDefault({ type: 'integer', description, minimum, maximum }, usual);

const number = (description: string, minimum: number, maximum: number, usual?: number): Schema =>
  withDefault({ type: 'number', description, minimum, maximum }, usual);

function withDefault(schema: Schema, usual: unknown): Schema {
  return usual === undefined ? schema : { ...schema, default: usual };
}

const list = (description: string, maxItems: number, items: Schema): Schema => ({
  type: 'array',
  description,
  minItems: 1,
  maxItems,
  items,
});

const LIVE_KEYS: Record<string, Schema> = {
  corner: oneLine('Corner sheet, by id or path', 200),
  car: oneLine('Car file, by id or path', 200),
  variant: oneLine("Variant of the corner sheet; the sheet's first if left out", 30),
};

const ZONE: Schema = {
  ...group({
    target: oneLine('Target over time, by id or path', 200),
    live: group(LIVE_KEYS, ['corner', 'car']),
    ...LIVE_KEYS,
  }),
  allOf: [exactlyOne('target', 'corner')],
};

const factors = (description: string, least: number, most: number): Schema => ({
  type: 'array',
  description,
  minItems: 2,
  maxItems: 2,
  items: { type: 'number', minimum: least, maximum: most },
});

const BLOCK: Schema = group(
  {
    reps: count('Reps of the block, shared among the zones', 1, 60),
    order: { enum: ORDERS, default: PLAN_DEFAULTS.order, description: 'How the zones follow' },
    vary: group({
      level_factor: factors('Smallest and largest factor of the level', 0.5, 1.5),
      release_length_factor: factors('Smallest and largest factor of the release length', 0.5, 2),
    }),
  },
  ['reps'],
);

const IN_A_ROW: Record<string, Schema> = {
  most_shown_in_a_row: count(
    'A shown rep more in a row is hidden instead',
    1,
    20,
    PLAN_DEFAULTS.mostShownInARow,
  ),
};

const STAGE: Schema = group(
  {
    until_rep: count('Last rep of the stage; the last stage has none', 1, 10_000),
    shown_share: number('Share of reps that draw the own trace', 0, 1),
  },
  ['shown_share'],
);

const FEEDBACK: Schema = choiceBy('rule', [
  group({ rule: { const: 'scheduled' }, ...IN_A_ROW }, ['rule']),
  group(
    {
      rule: { const: 'thinning' },
      counted: {
        enum: ['practice', 'life'],
        default: PLAN_DEFAULTS.counted,
        description: 'Reps of the zone in this practice, or ever',
      },
      stages: list('From often shown to rarely shown', 8, STAGE),
      ...IN_A_ROW,
    },
    ['rule', 'stages'],
  ),
]);

const HARD_REPS: Schema = group({
  from_level: number('Level from which on a rep is hard', 0.1, 1, PLAN_DEFAULTS.hardFromLevel),
  most: count('Hard reps after which the practice ends', 5, 300, PLAN_DEFAULTS.mostHardReps),
  fatigue_limit: number(
    'Factor of the difference between ten late and ten early reps that warns of fatigue',
    1,
    10,
    PLAN_DEFAULTS.fatigueLimit,
  ),
});

const { promotion } = PLAN_DEFAULTS;
const PROMOTE: Schema = group({
  in_corridor_reps: count('Hidden reps in the corridor', 1, 100, promotion.inCorridorReps),
  of_hidden_reps: count('Out of so many hidden reps', 1, 100, promotion.ofHiddenReps),
  corridor_share: number(
    'Share of the release that has to lie in the corridor',
    0.1,
    1,
    promotion.corridorShare,
  ),
});

/** The schema of plan files, published as profiles/schema/plan.schema.json. */
export const PLAN_SCHEMA: Schema = {
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'Plan',
  description: 'What is drilled in a practice, in which order, and how much of it is shown',
  ...group(
    {
      name: oneLine('Name shown to the driver', 40),
      advice: someLines('One or two sentences of the coach for the driver', 400),
      zones: list('Targets and corners to drill', 8, ZONE),
      first_of_day_reps: count(
        'First-of-day reps, on the first zone; 0 for none',
        0,
        10,
        PLAN_DEFAULTS.firstOfDayReps,
      ),
      warm_up_reps: count('Warm-up reps, on the first zone', 0, 10, PLAN_DEFAULTS.warmUpReps),
      blocks: list('Blocks in the order in which they come', 12, BLOCK),
      feedback: FEEDBACK,
      hard_reps: HARD_REPS,
      condition: oneLine('Kept with the reps of the blocks, for example late stint', 40),
      carry_over: group(
        {
          reps: count('Reps of the weekly check', 1, 10, PLAN_DEFAULTS.carryOverReps),
          zones: list('Targets and corners to check', 8, ZONE),
        },
        ['zones'],
      ),
      promote: PROMOTE,
      rest_s: number('Rest between reps', 0, 120),
      countdown_s: number('Foot off to cue', 1, 10),
      stint_gap_s: number('Road between two braking zones of a stint', 1, 300),
      late_call_share: number('Share of live-car reps with a late call', 0, 1, 0),
    },
    ['name', 'zones', 'blocks'],
  ),
};
