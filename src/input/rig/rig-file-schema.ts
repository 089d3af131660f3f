import { exactly, type ObjectSchema, RIG_SCHEMA } from './rig-schema.ts';

export const RIG_FILE_FORMAT = 'ebbline rig';
export const RIG_FILE_VERSION = 1;

/** The file in which rigs are kept. */
export const RIG_FILE_SCHEMA: ObjectSchema & { readonly title: string } = {
  title: 'Rig file',
  ...exactly({
    format: { const: RIG_FILE_FORMAT },
    version: { const: RIG_FILE_VERSION },
    rigs: { type: 'array', items: RIG_SCHEMA },
  }),
};
