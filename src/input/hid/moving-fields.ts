import { downToLowestDigit, withHeadroom } from './field-edges.ts';
import type { FieldLocation } from './report-field.ts';
import { type BitRange, isChanging, type ReportStream, readSeries } from './report-stream.ts';
import { isContinuous, type SeriesShape, seriesShape } from './series-shape.ts';

/** A field that moved like an axis. */
export interface MovingField {
  readonly stream: ReportStream;
  readonly range: BitRange;
  readonly shape: SeriesShape;
  /** Part of the field's whole range that was used, 0..1. */
  readonly share: number;
}

/** The top of a field is looked for with this many bits: few enough for an 8-bit axis, enough to see it glide. */
const WINDOW_BITS = 6;
const MIN_WINDOW_SPAN = 5;
/** Counts below which a movement is drift. */
const MIN_SPAN = 24;
/** A field that moves this much of its span at rest runs by itself. */
const MAX_REST_SHARE = 0.2;

/** All fields of the stream that glided there and back while the control was moved, none overlapping another. */
export function searchMovingFields(stream: ReportStream): MovingField[] {
  const found: MovingField[] = [];
  for (let top = WINDOW_BITS - 1; top < stream.bits; top++) {
    if (!isChanging(stream, top)) continue;
    for (const signed of [false, true]) {
      const field = fieldWithTop(stream, top, signed);
      if (field !== null) found.push(field);
    }
  }
  found.sort(bySpan);
  const kept: MovingField[] = [];
  for (const field of found)
    if (!kept.some((other) => overlaps(other.range, field.range))) kept.push(field);
  return kept.map((field) => describe(stream, withHeadroom(stream, field.range)));
}

/** Those of the descriptor's fields that glided there and back. */
export function movingAmong(stream: ReportStream, fields: readonly FieldLocation[]): MovingField[] {
  return fields
    .filter((f) => f.reportId === stream.reportId && f.bitSize >= WINDOW_BITS)
    .filter((f) => f.bitOffset + f.bitSize <= stream.bits && glides(stream, f, MIN_WINDOW_SPAN))
    .map((field) => describe(stream, field));
}

/** Larger movement first; an unsigned reading before a signed one, a low top before a high one. */
function bySpan(a: MovingField, b: MovingField): number {
  const tops = a.range.bitOffset + a.range.bitSize - b.range.bitOffset - b.range.bitSize;
  return b.shape.span - a.shape.span || Number(a.range.signed) - Number(b.range.signed) || tops;
}

function fieldWithTop(stream: ReportStream, top: number, signed: boolean): MovingField | null {
  const window = { bitOffset: top - WINDOW_BITS + 1, bitSize: WINDOW_BITS, signed };
  if (!glides(stream, window, MIN_WINDOW_SPAN)) return null;
  const range = downToLowestDigit(stream, top, signed);
  return glides(stream, range, MIN_SPAN) ? describe(stream, range) : null;
}

/** True for bits that move without tearing, come back, and keep still at rest. */
function glides(stream: ReportStream, range: BitRange, minSpan: number): boolean {
  const shape = seriesShape(readSeries(stream.moved, range));
  if (shape.span < minSpan || shape.turns === 0 || !isContinuous(shape)) return false;
  return seriesShape(readSeries(stream.rest, range)).span <= MAX_REST_SHARE * shape.span;
}

function describe(stream: ReportStream, { bitOffset, bitSize, signed }: BitRange): MovingField {
  const range = { bitOffset, bitSize, signed };
  const shape = seriesShape(readSeries(stream.moved, range));
  return { stream, range, shape, share: shape.span / (2 ** bitSize - 1) };
}

function overlaps(a: BitRange, b: BitRange): boolean {
  return a.bitOffset < b.bitOffset + b.bitSize && b.bitOffset < a.bitOffset + a.bitSize;
}
