import type { Options } from 'ajv';

/** Schemas are our own and tests hold them to draft 7; checking and optimising them would cost start-up time. */
export const VALIDATOR_OPTIONS: Options = {
  allErrors: true,
  discriminator: true,
  validateSchema: false,
  allowUnionTypes: true,
  code: { optimize: false },
};
