import { LIMITS } from './archive-format.ts';
import { damagedArchive } from './damaged-archive.ts';
import type { Archive } from './open-archive.ts';
import type { Check } from './shape.ts';

/**
 * The lines of an entry as checked values, one after the other. After the last one the entry is known to be what the
 * manifest says.
 *
 * @throws Problem with the line for what does not belong there
 */
export async function* archiveLines<T>(
  archive: Archive,
  name: string,
  shape: Check,
): AsyncIterable<T> {
  const entry = archive.manifest.entries.find((one) => one.name === name)!;
  let number = 0;
  for await (const bytes of splitLines(archive.read(entry), `${archive.path}, ${name}`)) {
    number++;
    const where = `${archive.path}, ${name}, line ${number}`;
    const value = parse(bytes, where);
    const wrong = shape(value, '');
    if (wrong !== null)
      throw damagedArchive(`the line does not belong here:${spaced(wrong)}`, where);
    yield value as T;
  }
}

/** The whole of a small entry. */
export async function archiveBytes(archive: Archive, name: string): Promise<Buffer> {
  const entry = archive.manifest.entries.find((one) => one.name === name)!;
  if (entry.bytes > LIMITS.fileBytes)
    throw damagedArchive(`the entry has ${entry.bytes} bytes`, `${archive.path}, ${name}`);
  const chunks: Uint8Array[] = [];
  for await (const chunk of archive.read(entry)) chunks.push(chunk);
  return Buffer.concat(chunks);
}

async function* splitLines(
  chunks: AsyncIterable<Uint8Array>,
  where: string,
): AsyncIterable<Uint8Array> {
  let pending: Uint8Array[] = [];
  let pendingBytes = 0;
  for await (const chunk of chunks) {
    let from = 0;
    for (let end = chunk.indexOf(10); end >= 0; end = chunk.indexOf(10, from)) {
      yield Buffer.concat([...pending, chunk.subarray(from, end)]);
      pending = [];
      pendingBytes = 0;
      from = end + 1;
    }
    pending.push(chunk.subarray(from));
    pendingBytes += chunk.length - from;
    if (pendingBytes > LIMITS.lineBytes)
      throw damagedArchive(`a line is longer than ${LIMITS.lineBytes} bytes`, where);
  }
  if (pendingBytes > 0) throw damagedArchive('the last line has no end', where);
}

function parse(bytes: Uint8Array, where: string): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    throw damagedArchive('the line is no JSON', where);
  }
}

function spaced(wrong: string): string {
  return ` ${wrong.trim()}`;
}
