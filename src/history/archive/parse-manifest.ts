import { Problem } from '../../problem.ts';
import { ARCHIVE_FORMAT, LIMITS, type Manifest, type ManifestEntry } from './archive-format.ts';
import { damagedArchive } from './damaged-archive.ts';
import { type Check, fields, listOf, oneOf, orNull, text, whole } from './shape.ts';

const SHA_256: Check = (value, path) =>
  typeof value === 'string' && /^[0-9a-f]{64}$/.test(value) ? null : `${path} is no SHA-256`;

const amount = whole(0, Number.MAX_SAFE_INTEGER);

const manifestShape = fields<Manifest>({
  format: oneOf(ARCHIVE_FORMAT),
  program: oneOf('ebbline'),
  programVersion: text(100),
  exportedAt: text(100),
  drivers: listOf(text(1000), LIMITS.entries),
  sinceUtcMs: orNull(whole(-Number.MAX_SAFE_INTEGER, Number.MAX_SAFE_INTEGER)),
  counts: fields<Manifest['counts']>({ practices: amount, reps: amount, notes: amount }),
  entries: listOf(
    fields<ManifestEntry>({ name: text(1000), bytes: amount, sha256: SHA_256 }),
    LIMITS.entries,
  ),
});

/** @throws Problem for a manifest of a newer format, or anything that is none */
export function parseManifest(bytes: Uint8Array, where: string): Manifest {
  const manifest = parse(bytes, where);
  const { format, program } = (manifest ?? {}) as Partial<Manifest>;
  if (program === 'ebbline' && typeof format === 'number' && format > ARCHIVE_FORMAT)
    throw new Problem(`the archive has format ${format}, this program reads ${ARCHIVE_FORMAT}`, {
      where,
      next: 'Nothing was taken in. Use the newer version of ebbline that wrote it.',
    });
  const wrong = manifestShape(manifest, '');
  if (wrong !== null) throw damagedArchive(`the manifest is damaged: ${wrong.trim()}`, where);
  return manifest as Manifest;
}

function parse(bytes: Uint8Array, where: string): unknown {
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    throw damagedArchive('the manifest is no JSON', where);
  }
}
