import { writeFileSync } from 'node:fs';
import { Ajv } from 'ajv';
import standalone from 'ajv/dist/standalone/index.js';
import { CAR_SCHEMA } from './car/car-schema.ts';
import { CORNER_SCHEMA } from './corner/corner-schema.ts';
import { EVENT_SCHEMA } from './drill/event/event-schema.ts';
import { PLAN_SCHEMA } from './drill/plan/plan-schema.ts';
import { RECORDING_HEADER_SCHEMA } from './input/recording/recording-header-schema.ts';
import { RIG_FILE_SCHEMA } from './input/rig/rig-file-schema.ts';
import { SETUP_DRAFT_SCHEMA } from './input/rig/setup/setup-draft-schema.ts';
import { VALIDATOR_OPTIONS } from './profile/validator-options.ts';
import { TARGET_SCHEMA } from './target/target-schema.ts';

/**
 * The last step of the build: writes the validators of all schemas as code over `dist/profile/validator-of.js`, so that
 * a command neither loads the validator's compiler nor waits for it. A new kind of file adds its schema here.
 */
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

const ajv = new Ajv({ ...VALIDATOR_OPTIONS, code: { source: true } });
const files = SCHEMAS.map((schema): readonly [string, string] => {
  const file = `./${schema.title?.toLowerCase().replaceAll(' ', '-')}.validator.cjs`;
  writeFileSync(inProfile(file), standalone.default(ajv, ajv.compile(schema)));
  return [schema.title ?? '', file];
});
writeFileSync(
  inProfile('./validator-of.js'),
  `// Written by precompile-validators.js: each validator is loaded when it is first asked for.
import { createRequire } from 'node:module';
const load = createRequire(import.meta.url);
const files = new Map(${JSON.stringify(files)});
export function validatorOf({ title }) {
  const file = files.get(title);
  if (file === undefined) throw new Error(\`no validator was built for \${title}\`);
  return load(file);
}
`,
);

function inProfile(file: string): URL {
  return new URL(file, new URL('profile/', import.meta.url));
}
