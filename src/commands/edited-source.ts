import { realpathSync } from 'node:fs';
import { join, resolve, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { Problem } from '../problem.ts';
import { type EditedText, editedText } from '../target/edit/edit-model.ts';
import { readTarget } from '../target/read-target.ts';
import { exists, freeName } from './edited-file.ts';
import { isPath, profileEntry, readProfileText } from './profile-files.ts';
import { withSchemaPlace } from './schema-place.ts';
import { TARGET_FILES } from './target-files.ts';

/** What is edited, and where it will be saved. */
export interface EditedSource {
  readonly path: string;
  readonly now: EditedText;
  /** What the file at `path` holds; null for one that is not there yet. */
  readonly known: string | null;
}

/**
 * The target that the user names by path or id. One that came with the program is copied: to `out`, or to a name of its
 * own among the user's targets. With `out` any target is.
 *
 * @throws Problem for what cannot be found, read or used as a target, and for an `out` that is there
 */
export async function findEdited(
  named: string,
  out: string | null,
  dataDir: string,
): Promise<EditedSource> {
  const entry = isPath(named) ? null : await profileEntry(TARGET_FILES, named, dataDir);
  const from = entry?.path ?? named;
  const text = await readProfileText(from, 'target');
  const { id } = readTarget(text, from);
  const copy = out ?? (isBundled(from) ? await ownName(id, dataDir) : null);
  if (copy === null) return { path: from, now: sound(text, from), known: text };
  await refuseTaken(copy);
  return { path: copy, now: sound(withSchemaPlace(text, resolve(copy)), copy), known: null };
}

function sound(text: string, path: string): EditedText {
  const now = editedText(text, path);
  if (typeof now === 'string') throw new Error(`read as a target a moment ago: ${now}`);
  return now;
}

const BUNDLED = fileURLToPath(new URL('../../profiles/targets', import.meta.url));

function isBundled(path: string): boolean {
  return realpathSync(path).startsWith(realpathSync(BUNDLED) + sep);
}

async function ownName(id: string, dataDir: string): Promise<string> {
  const name = join(dataDir, 'targets', `my-${id}.yaml`);
  return (await exists(name)) ? freeName(name) : name;
}

async function refuseTaken(path: string): Promise<void> {
  if (!(await exists(path))) return;
  throw new Problem('the file is there already', {
    where: path,
    next: 'Give another name, or edit that file.',
    exitCode: 1,
  });
}
