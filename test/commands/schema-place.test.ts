import {
  copyFileSync,
  existsSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { withSchemaPlace } from '../../src/commands/schema-place.ts';
import { runCommand } from './run-command.ts';

const TARGETS = fileURLToPath(new URL('../../profiles/targets/', import.meta.url));
const LINE = '# yaml-language-server: $schema=../schema/target.schema.json';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline schema '));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** The schema that a written file leads an editor to. */
function schemaOf(path: string): { readonly title: string } {
  const [, place] = /^# yaml-language-server: \$schema=(\S+)$/m.exec(readFileSync(path, 'utf8'))!;
  expect(place).toMatch(/^file:/);
  return JSON.parse(readFileSync(fileURLToPath(place!), 'utf8'));
}

test('a place that leads to the schema stays, another one is the installed schema', () => {
  expect(withSchemaPlace(`${LINE}\nname: a\n`, join(TARGETS, 'x.yaml'))).toBe(`${LINE}\nname: a\n`);
  const [line, rest] = withSchemaPlace(`${LINE}\nname: a\n`, join(folder, 'x.yaml')).split('\n');
  expect(rest).toBe('name: a');
  expect(existsSync(fileURLToPath(line!.split('=')[1]!))).toBe(true);
});

test('an address on the network is left', () => {
  const far = '# yaml-language-server: $schema=https://example.org/target.schema.json\n';
  expect(withSchemaPlace(far, join(folder, 'x.yaml'))).toBe(far);
});

test('a text without the line, and an unknown schema, are left', () => {
  expect(withSchemaPlace('name: a\n', 'x.yaml')).toBe('name: a\n');
  const other = '# yaml-language-server: $schema=nothing.schema.json\n';
  expect(withSchemaPlace(other, join(folder, 'x.yaml'))).toBe(other);
});

test('checking a file says by which line editors find its schema, where its own leads nowhere', async () => {
  const file = join(folder, 'own.yaml');
  copyFileSync(join(TARGETS, 'hairpin.yaml'), file);
  const { code, stdout, stderr } = await runCommand(['target', 'check', file]);
  expect([code, stdout]).toEqual([0, `${file}: ok\n`]);
  const [line] = /# yaml-language-server: .*/.exec(stderr)!;
  writeFileSync(file, readFileSync(file, 'utf8').replace(LINE, line));
  expect(schemaOf(file).title).toBe('Target');
  expect((await runCommand(['target', 'check', file])).stderr).toBe('');
  const { stderr: bundled } = await runCommand(['target', 'check', join(TARGETS, 'hairpin.yaml')]);
  expect(bundled).toBe('');
});

test('what target derive and corner new write leads to its schema', async () => {
  const target = join(folder, 'target.yaml');
  await runCommand([
    'target',
    'derive',
    '--car',
    'gt',
    '--corner',
    'kiln-hairpin',
    '--out',
    target,
  ]);
  expect(schemaOf(target).title).toBe('Target');
  const corner = join(folder, 'corner.yaml');
  const numbers = ['--approach-kmh', '200', '--slowest-kmh', '95', '--zone-m', '120'];
  await runCommand(['corner', 'new', corner, ...numbers, '--turn-deg', '90', '--gear', '3']);
  expect(schemaOf(corner).title).toMatch(/^Corner/);
});
