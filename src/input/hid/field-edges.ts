import { type CarryEvidence, carryEvidence, isNextDigit } from './carry-evidence.ts';
import type { Reports } from './control-recording.ts';
import { type BitRange, isChanging, type ReportStream, readSeries } from './report-stream.ts';
import { changesOf, isConstant, isContinuous, seriesShape } from './series-shape.ts';

/** Widest axis that is looked for. */
export const MAX_AXIS_BITS = 16;
/** Sizes that fields have where they do not fill whole bytes. */
const USUAL_SIZES = [8, 10, 12, 14, 16] as const;

/**
 * Goes down from the top bit of a moving field, digit by digit, to its lowest one.
 * @returns the field's bits as far as they took part in the movement
 */
export function downToLowestDigit(stream: ReportStream, top: number, signed: boolean): BitRange {
  const widest = Math.max(0, top + 1 - MAX_AXIS_BITS);
  let low = top;
  for (let bit = top - 1; bit >= widest; bit--) {
    const belongs = isDigitBelow(stream, bit, top, signed);
    if (belongs === false) break;
    // Digits that nothing is known of count once a lower one turns out to belong.
    if (belongs === true) low = bit;
  }
  low = Math.max(widest, throughNoise(stream, low));
  return { bitOffset: low, bitSize: top - low + 1, signed };
}

/** Steps without carries that say no. A neighbour that drifts by a few counts makes two or three, near the top only. */
const ENOUGH_STEPS = 8;
const ENOUGH_STEPS_NEAR_TOP = 2;
const NEAR_TOP_BITS = 3;

/** Whether a bit continues the digits from `top` down to the one above it; null where nothing tells. */
function isDigitBelow(
  stream: ReportStream,
  bit: number,
  top: number,
  signed: boolean,
): boolean | null {
  if (!isChanging(stream, bit)) return false;
  const upper = { bitOffset: bit + 1, bitSize: top - bit, signed };
  const [moved, rest] = [stream.moved, stream.rest].map((reports) =>
    carryEvidence(readSeries(reports, upper), readSeries(reports, bitAt(bit))),
  ) as [CarryEvidence, CarryEvidence];
  const both = { steps: moved.steps + rest.steps, carries: moved.carries + rest.carries };
  const quiet = isConstant(readSeries(stream.rest, bitAt(bit)));
  const enough = upper.bitSize <= NEAR_TOP_BITS ? ENOUGH_STEPS_NEAR_TOP : ENOUGH_STEPS;
  // Where carries say nothing, a bit that changes only while this control is moved belongs to it.
  return isNextDigit(both, quiet, enough) ?? (quiet || null);
}

/**
 * Digits deep in the noise carry no more than chance. They are taken for the field's when they change as noise does
 * (fading upwards, and not with nearly every report as the lowest bit of a counter) and nothing else that changes is
 * below them in their byte.
 */
function throughNoise(stream: ReportStream, low: number): number {
  if (low % 8 === 0 || !fadesInto(stream, low)) return low;
  let lowest = low;
  while (lowest % 8 !== 0 && isNoise(stream, lowest - 1)) lowest--;
  const ends = lowest % 8 === 0 || !isChanging(stream, lowest - 1);
  return ends ? lowest : low;
}

/** Shares of the reports at rest in which a bit changes: in noise, in chance, in the last trace of noise. */
const NOISE = { least: 0.01, most: 0.75, chance: 0.4, trace: 0.02 } as const;

/** Noise never stops at full strength from one digit to the next, as a neighbour's bits do. */
function fadesInto(stream: ReportStream, low: number): boolean {
  return noiseAt(stream, low) >= NOISE.trace || noiseAt(stream, low - 1) <= NOISE.chance;
}

function isNoise(stream: ReportStream, bit: number): boolean {
  const share = noiseAt(stream, bit);
  return share >= NOISE.least && share <= NOISE.most;
}

function noiseAt({ rest }: ReportStream, bit: number): number {
  return rest.length === 0 ? 0 : changesOf(readSeries(rest, bitAt(bit))) / rest.length;
}

/**
 * Adds the bits above that a stronger movement may need, as a driver rarely reaches the end of a stiff pedal: those
 * that stood at 0 (or repeated the sign of a signed field), up to the end of the byte where the field starts with a
 * byte, else up to the next usual size. One last bit at 1 completes a field that rests in its middle.
 */
export function withHeadroom(stream: ReportStream, field: BitRange): BitRange {
  const room = Math.min(roomFor(field), stream.bits - field.bitOffset);
  let wider = field;
  while (wider.bitSize < room && isHeadroom(stream, wider, room))
    wider = { ...wider, bitSize: wider.bitSize + 1 };
  return wider;
}

function roomFor({ bitOffset, bitSize }: BitRange): number {
  if (bitOffset % 8 === 0) return Math.min(MAX_AXIS_BITS, 8 * Math.ceil(bitSize / 8));
  return USUAL_SIZES.find((size) => size >= bitSize) ?? bitSize;
}

function isHeadroom(stream: ReportStream, field: BitRange, room: number): boolean {
  const own = [...stream.rest, ...stream.moved];
  const next = readSeries(own, bitAt(field.bitOffset + field.bitSize));
  const wider = { ...field, bitSize: field.bitSize + 1 };
  const sign = readSeries(own, bitAt(field.bitOffset + field.bitSize - 1));
  const fits = field.signed
    ? next.every((bit, i) => bit === sign[i])
    : isConstant(next) && (next[0] === 0 || wider.bitSize === room);
  return fits && stream.others.every((other) => staysWhole(stream.rest, other, wider));
}

/** Another control leaves the wider field alone, or moves it as one: then both share it. */
function staysWhole(rest: Reports, other: Reports, wider: BitRange): boolean {
  const values = readSeries([...rest, ...other], wider);
  const top = readSeries(other, bitAt(wider.bitOffset + wider.bitSize - 1));
  return isConstant(top) || isContinuous(seriesShape(values));
}

/** One bit as a range. */
export function bitAt(bitOffset: number): BitRange {
  return { bitOffset, bitSize: 1, signed: false };
}
