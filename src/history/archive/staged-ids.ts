import { damagedArchive } from './damaged-archive.ts';
import type { Archive } from './open-archive.ts';

/** Identities of one kind in an archive, and which of them were not taken in. */
export interface StagedIds {
  readonly all: ReadonlySet<string>;
  readonly refused: ReadonlySet<string>;
}

/** @throws Problem for one that came before */
export function takeId(all: Set<string>, id: string, { path }: Archive, name: string): void {
  if (all.has(id)) throw damagedArchive(`the id ${quotedId(id)} comes twice`, `${path}, ${name}`);
  all.add(id);
}

/** @throws Problem where the manifest promised another number of lines */
export function expectCount(
  all: ReadonlySet<string>,
  count: number,
  { path }: Archive,
  name: string,
): void {
  if (all.size !== count)
    throw damagedArchive(
      `there are ${all.size} lines, the manifest says ${count}`,
      `${path}, ${name}`,
    );
}

/** An identity as messages show it. */
export function quotedId(id: string): string {
  return JSON.stringify(id.slice(0, 80));
}
