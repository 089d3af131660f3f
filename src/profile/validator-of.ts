import { Ajv, type ValidateFunction } from 'ajv';
import { VALIDATOR_OPTIONS } from './validator-options.ts';

const validators = new WeakMap<object, ValidateFunction>();

/**
 * The validator of one of our schemas, compiled when it is first asked for. The build puts validators compiled ahead of
 * time in place of this file (see `build/precompile-validators.ts`): compiling them takes longer than all the reading.
 */
export function validatorOf(schema: object): ValidateFunction {
  const known = validators.get(schema);
  if (known !== undefined) return known;
  const compiled = new Ajv(VALIDATOR_OPTIONS).compile(schema);
  validators.set(schema, compiled);
  return compiled;
}
