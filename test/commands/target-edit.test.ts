import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { findEditedCar } from '../../src/commands/edited-car.ts';
import { findEdited } from '../../src/commands/edited-source.ts';
import { targetFileText } from '../../src/target/derive/target-file-text.ts';
import { bundledZone } from '../live-car/bundled-zone.ts';
import { runCommand } from './run-command.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'ebbline-edit-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test.each([
  [['hairpin'], 1, 'this needs a terminal'],
  [[], 2, 'no target named'],
  [['hairpin', 'right-angle'], 2, 'more than one target named'],
  [['hairpinn'], 1, 'Did you mean hairpin?'],
  [['no-such.yaml'], 1, 'there is no such file'],
  [['hairpin', '--car', 'gt'], 2, 'Give both --car and --corner'],
  [['hairpin', '--variant', 'wet'], 2, 'Give both --car and --corner'],
  [['hairpin', '--car', 'gtt', '--corner', 'kiln-hairpin'], 1, 'there is no car'],
  [['hairpin', '--out', '/dev/null'], 1, 'the file is there already'],
])('target edit %j ends with %i and says %s', async (argv, code, words) => {
  const { code: ended, stdout, stderr } = await runCommand(['target', 'edit', ...argv]);
  expect([ended, stdout]).toEqual([code, '']);
  expect(stderr).toContain(words);
});

describe('what is edited', () => {
  test('a bundled target becomes a copy among the own ones, by id and by path', async () => {
    const byId = await findEdited('hairpin', null, folder);
    expect(byId).toMatchObject({ path: join(folder, 'targets', 'my-hairpin.yaml'), known: null });
    const path = new URL('../../profiles/targets/hairpin.yaml', import.meta.url).pathname;
    expect((await findEdited(path, null, folder)).path).toBe(byId.path);
    expect(byId.now.text).toContain('# yaml-language-server: $schema=file:');
  });
});

describe('the car of a derived file', () => {
  const text = targetFileText(bundledZone('gt', 'kiln-hairpin', 'wet').derived, null);

  test('is found by what the file says', async () => {
    const { derived, note } = await findEditedCar({}, text, folder);
    expect([derived?.car.id, derived?.corner.id, derived?.corner.variant, note]).toEqual([
      'gt',
      'kiln-hairpin',
      'wet',
      null,
    ]);
  });

  test('gives way to the options, and one that is not here is told', async () => {
    const asked = { car: 'prototype', corner: 'kiln-hairpin' };
    expect((await findEditedCar(asked, text, folder)).derived?.car.id).toBe('prototype');
    const gone = await findEditedCar({}, text.replace('car gt', 'car gone'), folder);
    expect(gone.derived).toBeNull();
    expect(gone.note).toContain('there is no car "gone"');
    expect(await findEditedCar({}, 'name: a', folder)).toEqual({ derived: null, note: null });
  });
});
