import { readdirSync, readFileSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { CAR_SCHEMA } from '../car/car-schema.ts';
import { CORNER_SCHEMA } from '../corner/corner-schema.ts';
import { EVENT_SCHEMA } from '../drill/event/event-schema.ts';
import { PLAN_SCHEMA } from '../drill/plan/plan-schema.ts';
import { problemOfFile } from '../profile/profile-problem.ts';
import { parseProfile } from '../profile/profile-text.ts';
import type { Schema } from '../profile/schema.ts';
import { schemaProblems } from '../profile/schema-problems.ts';
import { TARGET_SCHEMA } from '../target/target-schema.ts';
import { writeInProfileRoom } from './in-profile-room.ts';

const PROFILES = new URL('../../profiles/', import.meta.url);
const KINDS: readonly (readonly [folder: string, schema: Schema])[] = [
  ['cars', CAR_SCHEMA],
  ['corners', CORNER_SCHEMA],
  ['events', EVENT_SCHEMA],
  ['plans', PLAN_SCHEMA],
  ['targets', TARGET_SCHEMA],
];

/**
 * Writes the values of the bundled profiles over `dist/profile/known-profile.js`, each beside the whole text it was read
 * from. A file that was changed since is another text, and is read like any other.
 *
 * @throws Problem for a bundled profile that its schema does not allow
 */
export function precompileProfiles(): void {
  const kinds = KINDS.map(([folder, schema]): readonly [string, object] => {
    const values = yamlFiles(folder).map((file): readonly [string, string] => {
      const text = readFileSync(file, 'utf8');
      return [text, asJson(text, schema, file.pathname)];
    });
    return [schema.title ?? '', Object.fromEntries(values)];
  });
  writeInProfileRoom('known-profile.js', knownProfiles(Object.fromEntries(kinds)));
  writeInProfileRoom('yaml-library.js', YAML_LIBRARY);
}

function yamlFiles(folder: string): URL[] {
  const place = new URL(`${folder}/`, PROFILES);
  return readdirSync(place)
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => new URL(name, place));
}

function asJson(text: string, schema: Schema, file: string): string {
  const parsed = parseProfile(text);
  const problems = [...parsed.problems, ...schemaProblems(parsed, schema).problems];
  if (problems.length > 0) throw problemOfFile(file, problems);
  const json = JSON.stringify(parsed.value);
  if (!isDeepStrictEqual(JSON.parse(json), parsed.value))
    throw new Error(`${file} holds a value that JSON does not keep`);
  return json;
}

const knownProfiles = (byTitle: object): string => `// Written by the build.
const known = ${JSON.stringify(byTitle, null, 1)};
export function knownProfile(text, { title }) {
  const json = Object.hasOwn(known, title) && Object.hasOwn(known[title], text) ? known[title][text] : undefined;
  return json === undefined ? undefined : JSON.parse(json);
}
`;

const YAML_LIBRARY = `// Written by the build.
import { createRequire } from 'node:module';
const load = createRequire(import.meta.url);
export function yamlLibrary() {
  return load('yaml');
}
`;
