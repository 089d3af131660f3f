import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname } from 'node:path';

const QUIET_MS = 800;

/** What an earlier run did not save. */
interface Kept {
  readonly text: string;
  /** True where the file was written after it. */
  readonly fileIsNewer: boolean;
}

/** Changes that are not saved yet, beside the file they belong to: `my-corner.yaml.autosave`. */
export interface KeptChanges {
  /** Keeps the text a moment later, once no key was pressed for a while; null where there is nothing to keep. */
  later(text: string | null): void;
  /** Keeps or drops at once what was last asked for. Never throws: a folder that cannot be written keeps nothing. */
  now(): Promise<void>;
  drop(): Promise<void>;
}

/** The name under which changes of a file are kept; no profile is found under it. */
export function keptName(path: string): string {
  return `${path}.autosave`;
}

/** What was kept for a file, null for nothing. */
export async function readKept(path: string): Promise<Kept | null> {
  try {
    const name = keptName(path);
    const text = await readFile(name, 'utf8');
    const file = await stat(path).catch(() => null);
    return { text, fileIsNewer: file !== null && file.mtimeMs > (await stat(name)).mtimeMs };
  } catch {
    return null;
  }
}

export function keepChanges(path: string): KeptChanges {
  const name = keptName(path);
  let wanted: string | null = null;
  /** Undefined while it is not known what an earlier run left. */
  let done: string | null | undefined;
  let timer: NodeJS.Timeout | null = null;
  let writing: Promise<void> = Promise.resolve();
  const now = (): Promise<void> => {
    if (timer !== null) clearTimeout(timer);
    timer = null;
    const text = wanted;
    if (text === done) return writing;
    done = text;
    writing = writing.then(() => keep(name, text)).catch(() => {});
    return writing;
  };
  return {
    now,
    later: (text) => {
      wanted = text;
      if (timer !== null) clearTimeout(timer);
      timer = setTimeout(() => void now(), QUIET_MS);
      timer.unref();
    },
    drop: () => {
      wanted = null;
      done = undefined;
      return now();
    },
  };
}

async function keep(name: string, text: string | null): Promise<void> {
  if (text === null) return rm(name, { force: true });
  await mkdir(dirname(name), { recursive: true });
  await writeFile(`${name}.tmp`, text);
  await rename(`${name}.tmp`, name);
}
