import { Problem } from '../../problem.ts';
import type { FieldLocation } from './report-field.ts';

/**
 * Reads one field of the report at `bytes[start] .. bytes[start + length - 1]`, as a source delivered it: the report id
 * comes first exactly when the device numbers its reports. Null where the report has another id or ends before the
 * field does. Nothing is allocated.
 */
export type FieldReader = (bytes: Uint8Array, start: number, length: number) => number | null;

/**
 * Compiles the reader of a field once, so that a report costs only a few shifts.
 * @throws Problem for a location that no report can have
 */
export function compileField(field: FieldLocation): FieldReader {
  refuseImpossible(field);
  const { reportId, bitOffset, bitSize } = field;
  const idBytes = reportId === 0 ? 0 : 1;
  const first = idBytes + Math.floor(bitOffset / 8);
  const shift = bitOffset % 8;
  const needed = first + Math.ceil((shift + bitSize) / 8);
  const value = valueReader(needed - first, shift, bitSize, field.signed);
  return (bytes, start, length) => {
    if (length < needed || (idBytes === 1 && bytes[start] !== reportId)) return null;
    return value(bytes, start + first);
  };
}

function refuseImpossible({ reportId, bitOffset, bitSize }: FieldLocation): void {
  const sound =
    isWithin(reportId, 0, 255) &&
    isWithin(bitOffset, 0, Number.MAX_SAFE_INTEGER) &&
    isWithin(bitSize, 1, 32);
  if (sound) return;
  throw new Problem(`no report has ${bitSize} bits at bit ${bitOffset} of report ${reportId}`, {
    next: 'Set the control up again with `ebbline rig setup`.',
  });
}

function isWithin(value: number, min: number, max: number): boolean {
  return Number.isInteger(value) && value >= min && value <= max;
}

type ValueReader = (bytes: Uint8Array, at: number) => number;

/**
 * Gathers 1 to 5 little-endian bytes and cuts the field out of them. Shifting left to the top of the 32-bit word and
 * back again drops the neighbours above and extends the sign in one go.
 */
function valueReader(
  byteCount: number,
  shift: number,
  bitSize: number,
  signed: boolean,
): ValueReader {
  const spare = 32 - bitSize;
  const cut = signed
    ? (word: number) => (word << spare) >> spare
    : (word: number) => (word << spare) >>> spare;
  switch (byteCount) {
    case 1:
      return (b, i) => cut(b[i]! >>> shift);
    case 2:
      return (b, i) => cut((b[i]! | (b[i + 1]! << 8)) >>> shift);
    case 3:
      return (b, i) => cut((b[i]! | (b[i + 1]! << 8) | (b[i + 2]! << 16)) >>> shift);
    case 4:
      return (b, i) => cut(word32(b, i) >>> shift);
    default:
      return (b, i) => cut((word32(b, i) >>> shift) | (b[i + 4]! << (32 - shift)));
  }
}

function word32(b: Uint8Array, i: number): number {
  return b[i]! | (b[i + 1]! << 8) | (b[i + 2]! << 16) | (b[i + 3]! << 24);
}
