import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';

const ROOT = new URL('..', import.meta.url).pathname;
const json = (path: string): unknown => JSON.parse(readFileSync(join(ROOT, path), 'utf8'));
const manifest = json('package.json') as {
  readonly bin: Readonly<Record<string, string>>;
  readonly dependencies: Readonly<Record<string, string>>;
  readonly optionalDependencies: Readonly<Record<string, string>>;
  readonly devDependencies: Readonly<Record<string, string>>;
};
const runtime = [
  ...Object.keys(manifest.dependencies),
  ...Object.keys(manifest.optionalDependencies),
];

let packed: readonly string[] = [];
beforeAll(() => {
  const answer = JSON.parse(
    execFileSync('npm', ['pack', '--dry-run', '--json', '--ignore-scripts'], {
      cwd: ROOT,
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'ignore'],
    }),
  );
  // One object per package, in an array or by name: npm has done both.
  const [only] = Object.values(answer) as {
    readonly files: readonly { readonly path: string }[];
  }[];
  packed = only!.files.map(({ path }) => path);
});

describe('the archive', () => {
  test('holds the program, the profiles and their schemas, README and LICENSE', () => {
    const profiles = readdirSync(join(ROOT, 'profiles'), { recursive: true, encoding: 'utf8' })
      .filter((path) => /\.(yaml|json|md)$/.test(path))
      .map((path) => `profiles/${path}`);
    expect(profiles.length).toBeGreaterThan(30);
    for (const path of [
      manifest.bin.ebbline!,
      'dist/licences.json',
      'dist/bin/reader-worker.js',
      'dist/bin/better-sqlite3.LICENSE',
      'dist/profile/car.validator.cjs',
      'package.json',
      'README.md',
      'LICENSE',
      ...profiles,
    ])
      expect(packed).toContain(path);
  });

  test('holds nothing else: no test, map, declaration, source or part of the build', () => {
    const wanted =
      /^(package\.json|README\.md|LICENSE|profiles\/README\.md|profiles\/(cars|corners|targets|plans|events)\/[\w-]+\.yaml|profiles\/schema\/[\w-]+\.schema\.json|dist\/licences\.json|dist\/bin\/(package\.json|better-sqlite3\.LICENSE|[\w-]+\.js)|dist\/profile\/[\w-]+\.validator\.cjs)$/;
    expect(packed.filter((path) => !wanted.test(path))).toEqual([]);
  });
});

describe('what the built program imports', () => {
  const inFolder = (folder: string, kind: RegExp): string[] =>
    readdirSync(join(ROOT, folder))
      .filter((name) => kind.test(name))
      .map((name) => `${folder}/${name}`);
  const files = [...inFolder('dist/bin', /./), ...inFolder('dist/profile', /\.validator\.cjs$/)];
  const imported = files.flatMap((path) => {
    const text = readFileSync(join(ROOT, path), 'utf8');
    const statements = text.matchAll(/\b(?:from|import)\s*"([\w@./:-]+)"/g);
    const calls = text.matchAll(
      /(?:\bimport|require(?:\$\d+)?|installed|\.href\))\(["`]([\w@./:-]+)["`]\)/g,
    );
    return [...statements, ...calls].map((match) => ({ path, name: match[1]! }));
  });
  const packageOf = (name: string): string => /^(@[^/]+\/)?[^/]+/.exec(name)![0];
  /** By better-sqlite3, where nobody tells it its native part. */
  const NEVER = 'bindings';
  const bare = imported.filter(
    ({ name }) =>
      !name.startsWith('.') &&
      !name.startsWith('node:') &&
      !builtinModules.includes(name) &&
      name !== NEVER,
  );

  test('is found', () => {
    const names = new Set(bare.map(({ name }) => packageOf(name)));
    for (const name of ['blessed', 'yaml', 'ajv', 'better-sqlite3', 'node-hid'])
      expect(names).toContain(name);
  });

  test('is a dependency at run time, never one of development', () => {
    expect(bare.filter(({ name }) => !runtime.includes(packageOf(name)))).toEqual([]);
    expect(Object.keys(manifest.devDependencies).filter((name) => runtime.includes(name))).toEqual(
      [],
    );
  });
});

describe('the list of licences', () => {
  const licences = json('dist/licences.json') as readonly {
    readonly name: string;
    readonly version: string;
    readonly licence: string;
  }[];

  test('names every package the program needs, and none of development', () => {
    const names = licences.map(({ name }) => name);
    for (const name of runtime) expect(names).toContain(name);
    for (const name of ['typescript', 'vitest', '@biomejs/biome', 'fast-check'])
      expect(names).not.toContain(name);
  });

  test('agrees with what the installed packages say of themselves', () => {
    for (const name of Object.keys(manifest.dependencies)) {
      const said = json(`node_modules/${name}/package.json`) as {
        readonly version: string;
        readonly license: string;
      };
      expect(licences).toContainEqual({ name, version: said.version, licence: said.license });
    }
  });

  /** SPDX names of licences that ask for no more than to be named. */
  const PERMISSIVE = ['MIT', 'ISC', '0BSD', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', 'X11'];
  test('holds only licences that go with MIT', () => {
    const odd = licences.filter(
      ({ licence }) => !licence.split(' OR ').some((name) => PERMISSIVE.includes(name)),
    );
    expect(odd).toEqual([]);
  });
});
