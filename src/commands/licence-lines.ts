import { readFile } from 'node:fs/promises';

interface Licence {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
}

/** Written by the build; reached from `src` and from `dist` alike. */
const LIST = new URL('../../dist/licences.json', import.meta.url);

/** Every package that an installed ebbline brings along, with its licence, as lines of at most 80 columns. */
export async function licenceLines(): Promise<readonly string[]> {
  const licences = JSON.parse(await readFile(LIST, 'utf8')) as readonly Licence[];
  const width = Math.max(...licences.map(({ name }) => name.length));
  return [
    'ebbline itself is under the MIT licence: the file LICENSE beside README.md.',
    'These packages come along; the text of each licence, and of what its native',
    'parts carry, lies in its own folder under node_modules.',
    '',
    ...licences.map(
      ({ name, version, licence }) => `${name.padEnd(width)}  ${version.padEnd(8)}  ${licence}`,
    ),
  ];
}
