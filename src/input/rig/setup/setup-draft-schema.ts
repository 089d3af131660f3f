import { exactly, IDENTITY_SCHEMA, type ObjectSchema } from '../rig-schema.ts';

export const SETUP_DRAFT_FORMAT = 'ebbline rig setup';
export const SETUP_DRAFT_VERSION = 1;

/** How far setting up had come when it was left. */
export const SETUP_DRAFT_SCHEMA: ObjectSchema & { readonly title: string } = {
  title: 'Setup draft',
  ...exactly({
    format: { const: SETUP_DRAFT_FORMAT },
    version: { const: SETUP_DRAFT_VERSION },
    done: { type: 'array', items: { type: 'string' } },
    devices: {
      type: 'array',
      items: exactly({
        identity: IDENTITY_SCHEMA,
        name: { type: 'string' },
        descriptorSha: { anyOf: [{ type: 'null' }, { type: 'string' }] },
      }),
    },
  }),
};
