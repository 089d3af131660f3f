import type { MeasureRow, RepKind } from './measure-row.ts';

/**
 * The reps of one practice as bytes: the format, the number of reps and the length of the kinds (four bytes each),
 * the kinds as JSON, then rep by rep the place of its kind (two bytes) and its numbers (eight bytes each, NaN for
 * none). Little-endian throughout.
 */
export interface MeasurePack {
  readonly kinds: readonly RepKind[];
  readonly reps: number;
  kind(rep: number): number;
  number(rep: number, column: PackColumn): number;
}

/** Numbers of a rep in their order. */
const PACK_COLUMNS = [
  'id',
  'utcMs',
  'score',
  'releaseErrorLevel',
  'averageErrorLevel',
  'startOfReleaseErrorS',
  'reapplications',
] as const satisfies readonly (keyof MeasureRow)[];
export type PackColumn = 0 | 1 | 2 | 3 | 4 | 5 | 6;

/** Changes with the layout, with a field of a kind and with what a column means: packs of another format are void. */
const FORMAT = 1;
const HEAD_BYTES = 12;
const REP_BYTES = 2 + 8 * PACK_COLUMNS.length;
/** Practices of the same drill have the same kinds, and parsing them costs more than the numbers. */
const MOST_KNOWN = 1000;

export function encodePack(rows: readonly MeasureRow[]): Uint8Array {
  const [kinds, places] = kindsOf(rows);
  const text = new TextEncoder().encode(JSON.stringify(kinds));
  const start = HEAD_BYTES + text.length;
  const bytes = new Uint8Array(start + rows.length * REP_BYTES);
  const view = new DataView(bytes.buffer);
  for (const [i, value] of [FORMAT, rows.length, text.length].entries())
    view.setUint32(4 * i, value, true);
  bytes.set(text, HEAD_BYTES);
  for (const [i, row] of rows.entries()) {
    const at = start + i * REP_BYTES;
    view.setUint16(at, places[i]!, true);
    for (const [column, name] of PACK_COLUMNS.entries())
      view.setFloat64(at + 2 + 8 * column, row[name] ?? Number.NaN, true);
  }
  return bytes;
}

/** Null for bytes that are no pack of this format. */
export type PackReader = (bytes: Uint8Array) => MeasurePack | null;

/** Reads packs one after the other; those with the same kinds share them. */
export function packReader(): PackReader {
  const known = new Map<string, readonly RepKind[]>();
  return (bytes) => {
    const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
    if (bytes.length < HEAD_BYTES || view.getUint32(0, true) !== FORMAT) return null;
    const [reps, length] = [view.getUint32(4, true), view.getUint32(8, true)];
    const start = HEAD_BYTES + length;
    if (bytes.length !== start + reps * REP_BYTES) return null;
    const text = Buffer.from(bytes.buffer, bytes.byteOffset + HEAD_BYTES, length).toString('utf8');
    const kinds = known.get(text) ?? parseKinds(text);
    if (kinds === null) return null;
    if (known.size < MOST_KNOWN) known.set(text, kinds);
    return {
      kinds,
      reps,
      kind: (rep) => view.getUint16(start + rep * REP_BYTES, true),
      number: (rep, column) => view.getFloat64(start + rep * REP_BYTES + 2 + 8 * column, true),
    };
  };
}

function kindsOf(rows: readonly MeasureRow[]): [RepKind[], number[]] {
  const places = new Map<string, number>();
  const kinds: RepKind[] = [];
  const placeOf = (row: MeasureRow): number => {
    const kind = kindOf(row);
    const key = JSON.stringify(kind);
    const place = places.get(key) ?? kinds.push(kind) - 1;
    places.set(key, place);
    return place;
  };
  return [kinds, rows.map(placeOf)];
}

function kindOf(row: MeasureRow): RepKind {
  const { targetId, targetVersion, corner, condition, phase, feedback } = row;
  const { selfRating, voided, scoreVersion } = row;
  const what = { targetId, targetVersion, corner, condition, phase, feedback };
  return { ...what, selfRating, voided, scoreVersion };
}

function parseKinds(text: string): RepKind[] | null {
  try {
    return JSON.parse(text) as RepKind[];
  } catch {
    return null;
  }
}
