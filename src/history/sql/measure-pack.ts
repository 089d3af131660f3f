import { REP_NUMBERS } from '../../consistency/rep-columns.ts';
import type { MeasureRow, RepKind } from './measure-row.ts';

/**
 * The reps of one practice as bytes: the format, the number of reps and the length of the kinds (four bytes each), the
 * kinds as JSON with blanks up to a multiple of eight bytes, then the numbers column by column (eight bytes each, NaN
 * for none), then for each rep the place of its kind (two bytes). In the order of bytes of the machine: on another one
 * the format is another one too.
 */
export interface MeasurePack {
  readonly kinds: readonly RepKind[];
  readonly reps: number;
  /** The place of each rep's kind. */
  readonly places: Uint16Array;
  /** `PACK_COLUMNS` one after the other, `reps` numbers each. */
  readonly numbers: Float64Array;
}

/** Numbers of a rep in their order. */
const PACK_COLUMNS = [
  'id',
  'utcMs',
  ...REP_NUMBERS,
] as const satisfies readonly (keyof MeasureRow)[];

/** Changes with the layout, with a field of a kind and with what a column means: packs of another format are void. */
const FORMAT = 2;
const HEAD_BYTES = 12;
const NUMBER_BYTES = Float64Array.BYTES_PER_ELEMENT;
const REP_BYTES = 2 + NUMBER_BYTES * PACK_COLUMNS.length;
/** Practices of the same drill have the same kinds, and parsing them costs more than the numbers. */
const MOST_KNOWN = 1000;

export function encodePack(rows: readonly MeasureRow[]): Uint8Array {
  const [kinds, places] = kindsOf(rows);
  const json = new TextEncoder().encode(JSON.stringify(kinds));
  const start = NUMBER_BYTES * Math.ceil((HEAD_BYTES + json.length) / NUMBER_BYTES);
  const bytes = new Uint8Array(start + rows.length * REP_BYTES);
  new Uint32Array(bytes.buffer, 0, 3).set([FORMAT, rows.length, start - HEAD_BYTES]);
  bytes.fill(BLANK, HEAD_BYTES, start).set(json, HEAD_BYTES);
  const numbers = new Float64Array(bytes.buffer, start, rows.length * PACK_COLUMNS.length);
  for (const [column, name] of PACK_COLUMNS.entries())
    for (const [i, row] of rows.entries())
      numbers[column * rows.length + i] = row[name] ?? Number.NaN;
  new Uint16Array(bytes.buffer, start + numbers.byteLength).set(places);
  return bytes;
}

const BLANK = 0x20;

/** Null for bytes that are no pack of this format. */
type PackReader = (bytes: Uint8Array) => MeasurePack | null;

/** Reads packs one after the other; those with the same kinds share them. */
export function packReader(): PackReader {
  const known = new Map<string, readonly RepKind[]>();
  return (given) => {
    if (given.length < HEAD_BYTES) return null;
    const bytes = aligned(given);
    const [format, reps, length] = new Uint32Array(bytes.buffer, bytes.byteOffset, 3);
    const start = HEAD_BYTES + length!;
    if (format !== FORMAT || bytes.length !== start + reps! * REP_BYTES) return null;
    const text = Buffer.from(bytes.buffer, bytes.byteOffset + HEAD_BYTES, length).toString('utf8');
    const kinds = known.get(text) ?? parseKinds(text);
    if (kinds === null) return null;
    if (known.size < MOST_KNOWN) known.set(text, kinds);
    const from = bytes.byteOffset + start;
    const numbers = new Float64Array(bytes.buffer, from, reps! * PACK_COLUMNS.length);
    const places = new Uint16Array(bytes.buffer, from + numbers.byteLength, reps);
    return { kinds, reps: reps!, places, numbers };
  };
}

/** Numbers are looked at where they lie, which takes a multiple of their size. */
function aligned(bytes: Uint8Array): Uint8Array {
  return bytes.byteOffset % NUMBER_BYTES === 0 ? bytes : Uint8Array.from(bytes);
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
