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
const PURE_ROOF = ['units.ts', 'number-text.ts', 'unit-text.ts', 'problem.ts'];
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

  const pure = files.filter(
    ({ room, path }) => PURE_ROOMS.includes(room) || PURE_ROOF.includes(path),
  );

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

  test('export only what another file imports, and nothing that only tests would miss', () => {
    expect(needlessExports()).toEqual([]);
  });

  test('have no import cycle', () => {
    expect(cycles()).toEqual([]);
  });

  test.each(files)('$path has at most 300 lines', ({ text }) => {
    expect(text.split('\n').length).toBeLessThanOrEqual(301);
  });
});

/**
 * Exports that no other file imports, and those that tests alone import and their own file does not use. What the build
 * makes imports from `build/` by names of its own.
 */
function needlessExports(): string[] {
  const fromSrc = importedNames(SRC);
  const fromTests = importedNames(join(SRC, '../test'));
  return files.flatMap(({ path, room, text }) => {
    const code = text.replace(/\/\*.*?\*\/|^\s*\/\/.*$/gms, '');
    const names = [
      ...code.matchAll(/^export (?:async )?(?:function\*?|const|class|interface|type) (\w+)/gm),
    ];
    const isNeeded = (name: string): boolean => {
      const usedHere = [...code.matchAll(new RegExp(`\\b${name}\\b`, 'g'))].length > 1;
      return fromSrc.has(`${path} ${name}`) || (usedHere && fromTests.has(`${path} ${name}`));
    };
    return names.flatMap(([, name]) =>
      room === 'build' || isNeeded(name!) ? [] : `${path}: ${name}`,
    );
  });
}

/** `path name` of all that the files of a folder import from `src/`. */
function importedNames(folder: string): ReadonlySet<string> {
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' });
  const found = paths
    .filter((path) => path.endsWith('.ts'))
    .flatMap((path) => {
      const text = readFileSync(join(folder, path), 'utf8');
      const imports = /^(?:import|export)\s[^;']*?from\s+'(\.[^']+)'|import\('(\.[^']+)'\)/gms;
      return [...text.matchAll(imports)].flatMap(([statement, named, whole]) => {
        const from = relative(SRC, resolve(folder, dirname(path), (named ?? whole)!));
        // Who imports a file as a whole may use whatever it names anywhere.
        const words = named === undefined || statement.includes('*') ? text : statement;
        return [...words.matchAll(/\w+/g)].map(([name]) => `${from} ${name}`);
      });
    });
  return new Set(found);
}

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
