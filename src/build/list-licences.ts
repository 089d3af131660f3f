import { readFileSync, writeFileSync } from 'node:fs';

interface Locked {
  readonly version?: string;
  readonly license?: string;
  readonly dev?: boolean;
}

const ROOT = new URL('../../', import.meta.url);

/**
 * Writes `dist/licences.json`, which names every package that an installed ebbline brings along. The lock file says which
 * these are, also those that this machine could not install.
 */
export function listLicences(): void {
  const { packages } = JSON.parse(readFileSync(new URL('package-lock.json', ROOT), 'utf8')) as {
    readonly packages: Readonly<Record<string, Locked>>;
  };
  const entries = Object.entries(packages)
    .filter(([folder, { dev }]) => folder !== '' && dev !== true)
    .map(([folder, { version = '', license = 'not said' }]) => ({
      name: folder.replace(/^.*node_modules\//, ''),
      version,
      licence: license.replace(/^\((.*)\)$/, '$1'),
    }));
  const unique = new Map(entries.map((entry) => [`${entry.name} ${entry.version}`, entry]));
  const sorted = [...unique.values()].sort((a, b) => (a.name < b.name ? -1 : 1));
  writeFileSync(new URL('dist/licences.json', ROOT), `${JSON.stringify(sorted, null, 1)}\n`);
}
