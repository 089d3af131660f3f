import type { Schema } from '../../profile/schema.ts';
import { exactlyOne, group, oneLine, someLines } from '../../profile/schema-parts.ts';
import { SESSIONS } from './circuit-event.ts';

const CALL_SHARE = (description: string): Schema => ({
  type: 'number',
  description,
  minimum: 0,
  maximum: 1,
});

const ZONE: Schema = {
  ...group(
    {
      corner: oneLine('Corner sheet, by id or path', 200),
      car: oneLine("Car file, by id or path; the event's if left out", 200),
      variant: oneLine("Driven in every session, in place of the session's", 30),
      to_next_s: {
        type: 'number',
        description: 'Seconds at lap pace from the slowest point to the next brake point',
        minimum: 1,
        maximum: 120,
      },
      to_next_m: {
        type: 'number',
        description: 'Metres from the slowest point to the next brake point',
        minimum: 20,
        maximum: 5000,
      },
    },
    ['corner'],
  ),
  allOf: [exactlyOne('to_next_s', 'to_next_m')],
};

const SESSION: Schema = group(
  {
    session: { enum: SESSIONS, description: 'Which session' },
    variant: oneLine("Variant of the corner sheets; each sheet's first if left out", 30),
    late_call_share: CALL_SHARE("Share of reps with a late call; the event's if left out"),
  },
  ['session'],
);

/** The schema of event files, published as profiles/schema/event.schema.json. */
export const EVENT_SCHEMA: Schema = {
  $schema: 'http://json-schema.org/draft-07/schema#',
  title: 'Event',
  description: 'The braking zones of a circuit in lap order, and the day they are driven on',
  ...group(
    {
      name: oneLine('Name shown to the driver', 40),
      advice: someLines('One or two sentences of the coach for the driver', 400),
      date: {
        type: 'string',
        description: 'First day of the event, as 2027-04-10',
        pattern: '^[0-9]{4}-[0-9]{2}-[0-9]{2}$',
      },
      car: oneLine('Car file of the zones that name none, by id or path', 200),
      zones: {
        type: 'array',
        description: 'Braking zones in lap order; the last leads to the first',
        minItems: 2,
        maxItems: 24,
        items: ZONE,
      },
      sessions: {
        type: 'array',
        description: 'How the circuit is driven in each session',
        minItems: 1,
        maxItems: SESSIONS.length,
        items: SESSION,
      },
      late_call_share: { ...CALL_SHARE('Share of reps with a late call'), default: 0 },
      brakes_stay_hot: {
        type: 'boolean',
        description: 'Brakes keep their heat from zone to zone and cool on the road between',
        default: false,
      },
    },
    ['name', 'date', 'zones', 'sessions'],
  ),
};
