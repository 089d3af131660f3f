import { createHash } from 'node:crypto';
import { closeSync, fstatSync, openSync } from 'node:fs';
import { type Entry, fromFdPromise, type ZipFile } from 'yauzl';
import { Problem } from '../../problem.ts';
import { withFileProblems } from '../file-problem.ts';
import {
  fileOfEntry,
  isSamplesCsv,
  LIMITS,
  MANIFEST,
  type Manifest,
  type ManifestEntry,
  NOTES,
  PRACTICES,
  README,
  REPS,
  REPS_CSV,
} from './archive-format.ts';
import { damagedArchive } from './damaged-archive.ts';
import { parseManifest } from './parse-manifest.ts';

const FIXED: readonly string[] = [README, PRACTICES, REPS, NOTES, REPS_CSV];
/** Of the header before each entry's data, without name and extra field (APPNOTE.TXT 4.3.7). */
const LOCAL_HEADER_BYTES = 30;

/** An archive that is open, its list of entries checked against its manifest. */
export interface Archive {
  readonly path: string;
  readonly manifest: Manifest;
  /**
   * The bytes of an entry in chunks. At its end they are what the manifest says.
   * @throws Problem where they are not, or the file ends early
   */
  read(entry: ManifestEntry): AsyncIterable<Uint8Array>;
  close(): void;
}

/**
 * Opens an archive and checks all that can be checked without reading it through: names, sizes, overlaps, manifest.
 *
 * @throws Problem for anything that `ebbline export` does not write
 */
export async function openArchive(path: string): Promise<Archive> {
  const fd = openFile(path);
  try {
    const zip = await inArchive(path, () =>
      fromFdPromise(fd, { autoClose: false, strictFileNames: true, validateEntrySizes: true }),
    );
    const entries = await inArchive(path, () => listed(zip, path));
    checkSizes([...entries.values()], path);
    const manifest = await readManifest(zip, entries, path);
    checkEntries(entries, manifest, path);
    return {
      path,
      manifest,
      read: (entry) => verified(zip, entries.get(entry.name)!, entry, path),
      close: () => closeSync(fd),
    };
  } catch (error) {
    closeSync(fd);
    throw error;
  }
}

function openFile(path: string): number {
  try {
    const fd = withFileProblems(path, () => openSync(path, 'r'));
    if (fstatSync(fd).isFile()) return fd;
    closeSync(fd);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
    throw new Problem('there is no such file', {
      where: path,
      next: 'Give the path of an archive that `ebbline export` wrote.',
    });
  }
  throw new Problem('this is not a file', {
    where: path,
    next: 'Give the path of an archive that `ebbline export` wrote.',
  });
}

async function listed(zip: ZipFile, path: string): Promise<Map<string, Entry>> {
  if (zip.entryCount > LIMITS.entries)
    throw damagedArchive(`the archive has ${zip.entryCount} entries`, path);
  const entries = new Map<string, Entry>();
  for await (const entry of zip.eachEntry()) {
    const { fileName } = entry;
    const quoted = JSON.stringify(fileName.slice(0, 200));
    if (!isKnown(fileName))
      throw damagedArchive(`the archive has an entry ${quoted}, which none has`, path);
    if (entries.has(fileName)) throw damagedArchive(`the archive has two entries ${quoted}`, path);
    if (entry.isEncrypted() || ![0, 8].includes(entry.compressionMethod))
      throw damagedArchive(`the entry ${quoted} is encrypted, or packed in another way`, path);
    entries.set(fileName, entry);
  }
  return entries;
}

function isKnown(name: string): boolean {
  return (
    name === MANIFEST || FIXED.includes(name) || fileOfEntry(name) !== null || isSamplesCsv(name)
  );
}

/** Against archives that unpack to far more than they are, also by entries that share their bytes. */
function checkSizes(entries: readonly Entry[], path: string): void {
  const packed = entries.reduce((sum, { compressedSize }) => sum + compressedSize, 0);
  const plain = entries.reduce((sum, { uncompressedSize }) => sum + uncompressedSize, 0);
  if (plain > LIMITS.harmlessBytes && plain > LIMITS.ratio * packed)
    throw damagedArchive(`the archive would unpack to ${plain} bytes of ${packed}`, path);
  const inOrder = entries.toSorted(
    (a, b) => a.relativeOffsetOfLocalHeader - b.relativeOffsetOfLocalHeader,
  );
  let end = 0;
  for (const { relativeOffsetOfLocalHeader: start, compressedSize } of inOrder) {
    if (start < end) throw damagedArchive('entries of the archive overlap', path);
    end = start + LOCAL_HEADER_BYTES + compressedSize;
  }
}

async function readManifest(
  zip: ZipFile,
  entries: ReadonlyMap<string, Entry>,
  path: string,
): Promise<Manifest> {
  const entry = entries.get(MANIFEST);
  if (entry === undefined)
    throw damagedArchive('this ZIP file is no archive of ebbline: it has no manifest', path);
  if (entry.uncompressedSize > LIMITS.manifestBytes)
    throw damagedArchive('the manifest is too large', path);
  const chunks: Uint8Array[] = [];
  for await (const chunk of unpacked(zip, entry, path)) chunks.push(chunk);
  return parseManifest(Buffer.concat(chunks), `${path}, ${MANIFEST}`);
}

function checkEntries(
  entries: ReadonlyMap<string, Entry>,
  { entries: promised }: Manifest,
  path: string,
): void {
  const names = new Set(promised.map(({ name }) => name));
  if (names.size !== promised.length || names.has(MANIFEST))
    throw damagedArchive('the manifest lists an entry twice, or itself', path);
  for (const name of [PRACTICES, REPS, NOTES])
    if (!names.has(name)) throw damagedArchive(`the manifest does not list ${name}`, path);
  for (const name of entries.keys())
    if (name !== MANIFEST && !names.has(name))
      throw damagedArchive(`the entry ${name} is not in the manifest`, path);
  for (const { name, bytes } of promised) {
    const entry = entries.get(name);
    if (entry === undefined) throw damagedArchive(`the entry ${name} is missing`, path);
    if (entry.uncompressedSize !== bytes)
      throw damagedArchive(
        `the entry ${name} has ${entry.uncompressedSize} bytes, the manifest says ${bytes}`,
        path,
      );
  }
}

async function* verified(
  zip: ZipFile,
  entry: Entry,
  { name, sha256 }: ManifestEntry,
  path: string,
): AsyncIterable<Uint8Array> {
  const hash = createHash('sha256');
  for await (const chunk of unpacked(zip, entry, path)) {
    hash.update(chunk);
    yield chunk;
  }
  if (hash.digest('hex') !== sha256)
    throw damagedArchive(`the check sum of the entry ${name} is wrong`, path);
}

async function* unpacked(zip: ZipFile, entry: Entry, path: string): AsyncIterable<Uint8Array> {
  const stream = await inArchive(path, () => zip.openReadStreamPromise(entry));
  try {
    for (const chunks = stream[Symbol.asyncIterator](); ; ) {
      const next = await inArchive(path, () => chunks.next());
      if (next.done === true) return;
      yield next.value as Uint8Array;
    }
  } finally {
    stream.destroy();
  }
}

/** What the library finds wrong with a file is a Problem. */
async function inArchive<T>(path: string, work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (error instanceof Problem) throw error;
    const { message } = error as Error;
    // its list of entries is at its end, and the library says so in its own words
    throw damagedArchive(
      message.includes('central directory')
        ? 'the archive is not whole: its end is missing'
        : `the archive is damaged (${message})`,
      path,
    );
  }
}
