import { mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { whyNotWritable } from '../../src/commands/why-not-writable.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'writable-'));
  writeFileSync(join(folder, 'file'), '');
});
afterAll(() => rmSync(folder, { recursive: true }));

describe('a folder', () => {
  test('that is there, or can be made, is writable, and is not made by asking', async () => {
    expect(await whyNotWritable(folder)).toBeNull();
    expect(await whyNotWritable(join(folder, 'a', 'b', 'c'))).toBeNull();
    expect(readdirSync(folder)).toEqual(['file']);
  });

  test('that is a file, or lies in one, is not', async () => {
    expect(await whyNotWritable(join(folder, 'file'))).toBe('it is not a folder');
    expect(await whyNotWritable(join(folder, 'file', 'data'))).toBe(
      'a part of its path is not a folder',
    );
  });

  const failing = (code: string, at: string) => ({
    stat: async (path: string) => {
      if (path !== at) throw Object.assign(new Error(), { code: 'ENOENT' });
      return { isDirectory: () => true };
    },
    access: async () => {
      throw Object.assign(new Error(), { code });
    },
  });

  test('that bars this user, or is read-only, is not', async () => {
    expect(await whyNotWritable('/data', failing('EACCES', '/data'))).toBe('it is not writable');
    expect(await whyNotWritable('/data', failing('EROFS', '/data'))).toBe('it is read-only');
    expect(await whyNotWritable('/a/b', failing('EACCES', '/a'))).toBe('it cannot be made there');
  });
});
