import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readTarget } from '../../src/target/read-target.ts';

const README = readFileSync(new URL('../../profiles/README.md', import.meta.url), 'utf8');
const examples = [...README.matchAll(/```yaml\n([\s\S]*?)```/g)].map((match) => match[1]!);

test('the examples of profiles/README.md are targets', () => {
  expect(examples.map((text) => readTarget(text, 'my-corner.yaml').domain)).toEqual([
    'time',
    'distance',
  ]);
});
