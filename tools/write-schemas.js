// Writes the published schemas from the built program: npm run schemas
import { writeFileSync } from 'node:fs';
import { TARGET_SCHEMA } from '../dist/target/target-schema.js';

const folder = new URL('../profiles/schema/', import.meta.url);
for (const [name, schema] of Object.entries({ target: TARGET_SCHEMA })) {
  writeFileSync(new URL(`${name}.schema.json`, folder), `${JSON.stringify(schema, null, 2)}\n`);
}
