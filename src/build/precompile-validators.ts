import { Ajv } from 'ajv';
import standalone from 'ajv/dist/standalone/index.js';
import { CAR_SCHEMA } from '../car/car-schema.ts';
import { CORNER_SCHEMA } from '../corner/corner-schema.ts';
import { EVENT_SCHEMA } from '../drill/event/event-schema.ts';
import { PLAN_SCHEMA } from '../drill/plan/plan-schema.ts';
import { RECORDING_HEADER_SCHEMA } from '../input/recording/recording-header-schema.ts';
import { RIG_FILE_SCHEMA } from '../input/rig/rig-file-schema.ts';
import { SETUP_DRAFT_SCHEMA } from '../input/rig/setup/setup-draft-schema.ts';
import { VALIDATOR_OPTIONS } from '../profile/validator-options.ts';
import { TARGET_SCHEMA } from '../target/target-schema.ts';
import { writeInProfileRoom } from './in-profile-room.ts';

const SCHEMAS = [
  CAR_SCHEMA,
  CORNER_SCHEMA,
  TARGET_SCHEMA,
  PLAN_SCHEMA,
  EVENT_SCHEMA,
  RIG_FILE_SCHEMA,
  SETUP_DRAFT_SCHEMA,
  RECORDING_HEADER_SCHEMA,
];

/**
 * Writes the validators of all schemas as code over `dist/profile/validator-of.js`, so that a command neither loads the
 * validator's compiler nor waits for it. A new kind of file adds its schema above.
 */
export function precompileValidators(): void {
  const ajv = new Ajv({ ...VALIDATOR_OPTIONS, code: { source: true } });
  const files = SCHEMAS.map((schema): readonly [title: string, file: string] => {
    const title = schema.title ?? '';
    const file = `${title.toLowerCase().replaceAll(' ', '-')}.validator.cjs`;
    writeInProfileRoom(file, standalone.default(ajv, ajv.compile(schema)));
    return [title, file];
  });
  writeInProfileRoom('validator-of.js', validatorOf(files));
}

/** The path is the same from `dist/profile` and from `dist/bin`, where the module is joined with others. */
const validatorOf = (
  files: readonly (readonly [string, string])[],
): string => `// Written by the build: each validator is loaded when it is first asked for.
import { createRequire } from 'node:module';
const load = createRequire(import.meta.url);
const files = new Map(${JSON.stringify(files)});
export function validatorOf({ title }) {
  const file = files.get(title);
  if (file === undefined) throw new Error(\`no validator was built for \${title}\`);
  return load(\`../profile/\${file}\`);
}
`;
