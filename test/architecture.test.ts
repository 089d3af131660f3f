import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';

const SRC = new URL('../src', import.meta.url).pathname;
const PURE_ROOMS = [
  'profile',
  'curve',
  'trace',
  'car',
  'corner',
  'target',
  'live',
  'score',
  'drill',
  'consistency',
  'report',
];
/** Files outside every room that a PURE room may import. */
const PURE_ROOF = ['units.ts', 'problem.ts'];
/** Libraries that compute and touch nothing. */
const PURE_PACKAGES = ['ajv', 'ajv/dist/2020.js', 'd3-scale', 'd3-shape', 'yaml'];

interface SourceFile {
  readonly path: string;
  readonly room: string;
  readonly text: string;
  readonly imports: readonly string[];
}

const files: readonly SourceFile[] = readdirSync(SRC, { recursive: true, encoding: 'utf8' })
  .filter((path) => path.endsWith('.ts'))
  .map((path) => {
    const text = readFileSync(join(SRC, path), 'utf8');
    const imports = [...text.matchAll(/(?:from|import|require)\s*\(?\s*['"]([^'"]+)['"]/g)].map(
      (m) => m[1] ?? '',
    );
    return { path, room: path.includes('/') ? (path.split('/')[0] ?? '') : '', text, imports };
  });

const importers = (name: RegExp): string[] =>
  files.filter(({ imports }) => imports.some((i) => name.test(i))).map(({ path }) => path);

/** The path below src/ that a relative import points to, or null for a package. */
function target(file: SourceFile, specifier: string): string | null {
  if (!specifier.startsWith('.')) return null;
  return relative(SRC, resolve(SRC, dirname(file.path), specifier));
}

describe('the rooms', () => {
  test('exist', () => {
    expect(files.length).toBeGreaterThan(20);
  });

  test('are those of the map in DEVELOPERS.md, and of its kinds', () => {
    const map = readFileSync(new URL('../DEVELOPERS.md', import.meta.url), 'utf8');
    const rows = [...map.matchAll(/^\| `(\w+)\/` +\| (world|pure) +\| \S/gm)];
    const named = (kind?: string): string[] =>
      rows.flatMap(([, room, of]) => (kind === undefined || of === kind ? room! : [])).sort();
    const rooms = new Set(files.map(({ room }) => room).filter((room) => room !== ''));
    expect(named()).toEqual([...rooms].sort());
    expect(named('pure')).toEqual(PURE_ROOMS.toSorted());
  });

  const pure = files.filter(({ room }) => PURE_ROOMS.includes(room));

  test.each(pure)('$path imports only PURE rooms and PURE packages', (file) => {
    const found = file.imports.filter((specifier) => {
      const path = target(file, specifier);
      if (path === null) return !PURE_PACKAGES.includes(specifier);
      return !(PURE_ROOF.includes(path) || PURE_ROOMS.includes(path.split('/')[0] ?? ''));
    });
    expect(found).toEqual([]);
  });

  test.each(pure)('$path has no clock and no unseeded randomness', ({ text }) => {
    const found = text.match(
      /\bDate\.now\b|\bnew Date\(\s*\)|\bperformance\.|\bMath\.random\b|\bprocess\.|\bsetTimeout\b/g,
    );
    expect(found ?? []).toEqual([]);
  });

  test('node-hid is imported in one file', () => {
    expect(importers(/^node-hid$/).length).toBeLessThanOrEqual(1);
  });

  test('blessed and blessed-contrib are imported in screens only', () => {
    expect(importers(/^blessed/).filter((path) => !path.startsWith('screens/'))).toEqual([]);
  });

  test('SQLite is imported in history only', () => {
    expect(
      importers(/^(better-sqlite3|node:sqlite)$/).filter((path) => !path.startsWith('history/')),
    ).toEqual([]);
  });

  test('have no import cycle', () => {
    expect(cycles()).toEqual([]);
  });

  test.each(files)('$path has at most 300 lines', ({ text }) => {
    expect(text.split('\n').length).toBeLessThanOrEqual(301);
  });
});

/** Every cycle of value imports (a type alone draws nothing in), as the path that closes it. */
function cycles(): string[] {
  const graph = new Map(
    files.map((file) => {
      const values = [
        ...file.text.matchAll(/^(?:import|export)\s+(?!type\b)[^;]*?from\s+['"]([^'"]+)['"]/gms),
      ];
      const next = values.flatMap((m) => target(file, m[1] ?? '') ?? []);
      return [file.path, next] as const;
    }),
  );
  const found: string[] = [];
  const state = new Map<string, 'open' | 'done'>();
  const visit = (path: string, trail: readonly string[]): void => {
    if (state.get(path) === 'done') return;
    if (state.get(path) === 'open') {
      found.push([...trail.slice(trail.indexOf(path)), path].join(' > '));
      return;
    }
    state.set(path, 'open');
    for (const next of graph.get(path) ?? []) visit(next, [...trail, path]);
    state.set(path, 'done');
  };
  for (const { path } of files) visit(path, []);
  return found;
}
