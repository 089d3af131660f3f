import { createHash } from 'node:crypto';
import { createWriteStream, writeFileSync } from 'node:fs';
import { buffer } from 'node:stream/consumers';
import { pipeline } from 'node:stream/promises';
import { openPromise } from 'yauzl';
import { ZipFile } from 'yazl';
import type { ArchivedFile, Manifest } from '../../../src/history/archive/archive-format.ts';
import { type MergeReport, MergeTally } from '../../../src/history/archive/merge-report.ts';
import { openArchive } from '../../../src/history/archive/open-archive.ts';
import { takeInArchive } from '../../../src/history/archive/take-in-archive.ts';
import { writeArchive } from '../../../src/history/archive/write-archive.ts';
import type { KeptQuery } from '../../../src/history/kept.ts';
import { openExistingHistory, openHistory } from '../../../src/history/open-history.ts';
import type { HistoryStore } from '../../../src/history/store.ts';
import type { Implementation } from '../implementations.ts';

export const EXPORTED_MS: number = Date.UTC(2026, 10, 26);

export interface Exporting {
  readonly query?: KeptQuery;
  readonly files?: readonly ArchivedFile[];
  readonly samplesCsv?: boolean;
  readonly exportedAtUtcMs?: number;
}

export async function exported(
  history: HistoryStore,
  path: string,
  { query = {}, files = [], samplesCsv = false, exportedAtUtcMs = EXPORTED_MS }: Exporting = {},
): Promise<Manifest> {
  const snapshot = history.snapshot();
  try {
    const content = { query, files, samplesCsv, programVersion: '0.0.0', exportedAtUtcMs };
    return await writeArchive(path, snapshot, content, () => {});
  } finally {
    snapshot.close();
  }
}

export interface Importing {
  readonly driver?: string | null;
  readonly repDone?: () => void;
}

/** Takes an archive into the history of a folder. */
export async function imported(
  path: string,
  dataDir: string,
  { drivers }: Pick<Implementation, 'drivers'>,
  { driver = null, repDone = () => {} }: Importing = {},
): Promise<MergeReport> {
  const tally = new MergeTally();
  const archive = await openArchive(path);
  const existing = openExistingHistory(dataDir, { drivers });
  let history = existing;
  try {
    const open = (): HistoryStore => (history ??= openHistory(dataDir, { drivers }));
    const options = { driver, unnamed: 'driver', repDone };
    await takeInArchive(archive, { dataDir, existing, open }, tally, options, async () => {});
    return tally.report();
  } finally {
    archive.close();
    history?.close();
  }
}

/** The entries of an archive in file order. */
export async function entriesOf(path: string): Promise<Map<string, Buffer>> {
  const zip = await openPromise(path, { autoClose: false });
  const entries = new Map<string, Buffer>();
  for await (const entry of zip.eachEntry())
    entries.set(entry.fileName, await buffer(await zip.openReadStreamPromise(entry)));
  zip.close();
  return entries;
}

export function manifestOf(entries: ReadonlyMap<string, Buffer>): Manifest {
  return JSON.parse(entries.get('manifest.json')!.toString()) as Manifest;
}

/** Packs entries with a manifest that fits them, but for `changes`. */
export async function packed(
  path: string,
  entries: ReadonlyMap<string, Buffer>,
  changes: (manifest: Manifest) => unknown = (manifest) => manifest,
): Promise<void> {
  const own = manifestOf(entries);
  const others = [...entries].filter(([name]) => name !== 'manifest.json');
  const manifest = {
    ...own,
    entries: others.map(([name, bytes]) => ({
      name,
      bytes: bytes.length,
      sha256: createHash('sha256').update(bytes).digest('hex'),
    })),
  };
  const bytes = Buffer.from(JSON.stringify(changes(manifest)));
  await zipped(path, [...others, ['manifest.json', bytes]]);
}

export async function zipped(
  path: string,
  entries: readonly (readonly [string, Buffer])[],
): Promise<void> {
  const zip = new ZipFile();
  for (const [name, bytes] of entries) zip.addBuffer(bytes, name);
  zip.end();
  await pipeline(zip.outputStream, createWriteStream(path));
}

/** Writes other bytes of the same length wherever `from` stands in a file. */
export function patched(path: string, bytes: Buffer, from: string, to: string): void {
  if (Buffer.byteLength(from) !== Buffer.byteLength(to)) throw new RangeError('other lengths');
  const copy = Buffer.from(bytes);
  for (let at = copy.indexOf(from); at >= 0; at = copy.indexOf(from, at + 1)) copy.write(to, at);
  writeFileSync(path, copy);
}
