import { exactly, IDENTITY_SCHEMA, type ObjectSchema, RIG_SCHEMA } from '../rig/rig-schema.ts';
import { RECORDING_FORMAT, RECORDING_VERSION } from './recording-lines.ts';

/** The first line of a recording. */
export const RECORDING_HEADER_SCHEMA: ObjectSchema & { readonly title: string } = {
  title: 'Recording header',
  ...exactly({
    format: { const: RECORDING_FORMAT },
    version: { const: RECORDING_VERSION },
    label: { type: 'string' },
    devices: {
      type: 'array',
      minItems: 1,
      maxItems: 255,
      items: exactly({
        identity: IDENTITY_SCHEMA,
        name: { type: 'string' },
        descriptor: { type: ['string', 'null'] },
      }),
    },
    rig: { anyOf: [{ type: 'null' }, RIG_SCHEMA] },
  }),
};
