// Writes the published schemas from the built program: npm run schemas
import { writeFileSync } from 'node:fs';
import { CAR_SCHEMA } from '../dist/car/car-schema.js';
import { CORNER_SCHEMA } from '../dist/corner/corner-schema.js';
import { TARGET_SCHEMA } from '../dist/target/target-schema.js';

const folder = new URL('../profiles/schema/', import.meta.url);
for (const [name, schema] of Object.entries({
  car: CAR_SCHEMA,
  corner: CORNER_SCHEMA,
  target: TARGET_SCHEMA,
})) {
  writeFileSync(new URL(`${name}.schema.json`, folder), `${JSON.stringify(schema, null, 2)}\n`);
}
