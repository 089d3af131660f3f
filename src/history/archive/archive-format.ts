/** Raised with every change of what a line or the manifest may hold; an older program refuses a newer archive. */
export const ARCHIVE_FORMAT: number = 1;

export const README = 'README.txt';
export const MANIFEST = 'manifest.json';
export const PRACTICES = 'practices.jsonl';
export const REPS = 'reps.jsonl';
export const NOTES = 'notes.jsonl';
export const REPS_CSV = 'reps.csv';

/** A file that people write, as it is kept in an archive. */
export interface ArchivedFile {
  /** Folder of its kind, for example `targets`. */
  readonly folder: string;
  /** With its ending. */
  readonly name: string;
  /** It came with the program and was not written by a person. */
  readonly bundled: boolean;
  readonly bytes: Buffer;
}

export interface ManifestEntry {
  readonly name: string;
  readonly bytes: number;
  /** Hexadecimal. */
  readonly sha256: string;
}

/** The last entry of an archive: what all others are, and have to be. */
export interface Manifest {
  readonly format: number;
  readonly program: 'ebbline';
  readonly programVersion: string;
  /** ISO 8601, UTC. */
  readonly exportedAt: string;
  readonly drivers: readonly string[];
  /** UTC milliseconds before which reps were left out; null for none. */
  readonly sinceUtcMs: number | null;
  readonly counts: { readonly practices: number; readonly reps: number; readonly notes: number };
  /** In file order. */
  readonly entries: readonly ManifestEntry[];
}

/** Bounds on what a reader takes in, far above any real history. */
export const LIMITS = {
  entries: 200_000,
  manifestBytes: 67_108_864,
  lineBytes: 67_108_864,
  /** UTF-8 of the longest file that people write. */
  fileBytes: 262_144,
  files: 5000,
  /** Real pedals make some 15; deflate can reach 1032. */
  ratio: 250,
  /** Below this much, no ratio is suspicious. */
  harmlessBytes: 67_108_864,
} as const;

const FOLDER = /^[a-z]{1,32}$/;
/** What no system takes in a name, what hides a file, and what a console device is called on Windows. */
const UNSAFE =
  /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}/\\:*?"<>|]|^[. ]|[. ]$|^(con|prn|aux|nul|com\d|lpt\d)(\.|$)/iu;
const LONGEST_NAME_BYTES = 200;

/** True for the name of a file that is safe to make in a folder of any system. */
export function isSafeFile(folder: string, name: string): boolean {
  return (
    FOLDER.test(folder) &&
    /\.ya?ml$/i.test(name) &&
    !UNSAFE.test(name) &&
    Buffer.byteLength(name) <= LONGEST_NAME_BYTES
  );
}

/** Where a file that people write lies in an archive. */
export function fileEntry({ folder, name, bundled }: Omit<ArchivedFile, 'bytes'>): string {
  return `${bundled ? 'bundled' : 'profiles'}/${folder}/${name}`;
}

/** The file that such an entry is; null for any other. */
export function fileOfEntry(entry: string): Omit<ArchivedFile, 'bytes'> | null {
  const [top = '', folder = '', name = '', ...more] = entry.split('/');
  const isFile = ['bundled', 'profiles'].includes(top) && more.length === 0;
  return isFile && isSafeFile(folder, name) ? { folder, name, bundled: top === 'bundled' } : null;
}

/** True for the samples of a rep as a spreadsheet reads them. */
export function isSamplesCsv(entry: string): boolean {
  return /^samples\/[\w.-]{1,100}\.csv$/.test(entry);
}
