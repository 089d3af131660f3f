/** JSON Schema (draft 7) of a `Rig` as files keep it. */
const whole = { type: 'integer', minimum: 0 };
const number = { type: 'number' };
const share = { type: 'number', minimum: 0, maximum: 1 };
const text = { type: 'string' };

export interface ObjectSchema {
  readonly type: 'object';
  readonly required: readonly string[];
  readonly additionalProperties: false;
  readonly properties: Readonly<Record<string, object>>;
}

/** An object with exactly these keys. */
export function exactly(properties: Readonly<Record<string, object>>): ObjectSchema {
  return {
    type: 'object',
    required: Object.keys(properties),
    additionalProperties: false,
    properties,
  };
}

function orNull(schema: object): object {
  return { anyOf: [{ type: 'null' }, schema] };
}

export const IDENTITY_SCHEMA: ObjectSchema = exactly({
  vendorId: whole,
  productId: whole,
  serial: orNull(text),
  interfaceNumber: { type: 'integer' },
  usagePage: whole,
  usage: whole,
});

const FIELD_SCHEMA = exactly({
  reportId: { type: 'integer', minimum: 0, maximum: 255 },
  bitOffset: whole,
  bitSize: { type: 'integer', minimum: 1, maximum: 32 },
  signed: { type: 'boolean' },
});

const LOAD_SCHEMA = exactly({
  newtonsPerCount: number,
  zeroCounts: number,
  loads: { type: 'array', items: exactly({ newtons: number, counts: number }) },
  residualN: orNull({ type: 'number', minimum: 0 }),
});

const AXIS_SCHEMA = exactly({
  role: { enum: ['brake', 'throttle', 'clutch', 'steering'] },
  device: IDENTITY_SCHEMA,
  field: FIELD_SCHEMA,
  calibration: exactly({
    restCounts: number,
    fullCounts: number,
    deadStart: share,
    deadEnd: share,
    sensor: { enum: ['force', 'pressure', 'travel', 'unknown'] },
    load: orNull(LOAD_SCHEMA),
  }),
});

const BUTTON_SCHEMA = exactly({
  device: IDENTITY_SCHEMA,
  field: FIELD_SCHEMA,
  pressedCounts: whole,
  control: text,
  action: {
    enum: [
      'next',
      'repeat',
      'pause',
      'note',
      'feedback',
      'finish',
      'self-rating',
      'display',
      'upshift',
      'downshift',
      null,
    ],
  },
});

const LENGTH = orNull({ type: 'number', minimum: 0, maximum: 0.5 });

const BRAKE_FEEL_SCHEMA = exactly({
  travelM: LENGTH,
  deadStrokeM: LENGTH,
  stiffnessNpm: orNull({ type: 'number', minimum: 0 }),
});

const RIG_PARTS = exactly({
  axes: { type: 'array', items: AXIS_SCHEMA },
  buttons: { type: 'array', items: BUTTON_SCHEMA },
  wheelLockDeg: orNull({ type: 'number', exclusiveMinimum: 0 }),
  foot: { enum: ['left', 'right'] },
  footwear: text,
});

/** What was measured by hand may be absent: nobody has to. */
export const RIG_SCHEMA: ObjectSchema = {
  ...RIG_PARTS,
  properties: { ...RIG_PARTS.properties, brakeFeel: BRAKE_FEEL_SCHEMA },
};
