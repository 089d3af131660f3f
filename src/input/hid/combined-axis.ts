import { compileField } from './compile-field.ts';
import { type Refusal, type Reports, refuse } from './control-recording.ts';
import { MAX_AXIS_BITS } from './field-edges.ts';
import type { LearnedAxis } from './learn-axis.ts';
import type { FieldLocation } from './report-field.ts';
import { isContinuous, seriesShape } from './series-shape.ts';

/** Two pedals on one field that rests in the middle. Pressed together they cancel out. */
interface CombinedAxis {
  readonly kind: 'combined';
  readonly field: FieldLocation;
  readonly restCounts: number;
  readonly firstFullCounts: number;
  readonly secondFullCounts: number;
}

/** One pedal as it was learned, with the reports recorded while it was moved. */
export interface LearnedMovement {
  readonly axis: LearnedAxis;
  readonly moved: Reports;
}

/**
 * Whether two pedals that were learned one after the other share one field, which goes one way with the first and the
 * other way with the second. Each alone shows only half of such a field, so the bits of both are put together.
 * @returns null where each has a field of its own; a refusal where both moved it the same way
 */
export function combinedAxis(
  first: LearnedMovement,
  second: LearnedMovement,
  rest: Reports,
): CombinedAxis | Refusal | null {
  const bits = sharedBits(first.axis.field, second.axis.field);
  if (bits === null) return null;
  const recordings = [first.moved, second.moved].map((moved) => [...rest, ...moved]);
  const field = [false, true]
    .map((signed) => ({ ...bits, signed }))
    .find((f) => recordings.every((reports) => isContinuous(seriesShape(valuesOf(reports, f)))));
  if (field === undefined)
    return refuse('too-noisy', 'The signal jumps too much. Move the control slowly and alone.');
  const restCounts = restOf(rest, first.moved, field);
  const [firstFullCounts, secondFullCounts] = [first, second].map(({ moved }) =>
    furthest(valuesOf(moved, field), restCounts),
  ) as [number, number];
  const opposite = (firstFullCounts - restCounts) * (secondFullCounts - restCounts) < 0;
  if (opposite) return { kind: 'combined', field, restCounts, firstFullCounts, secondFullCounts };
  return refuse('same-control', 'The same control was moved both times. Move the other one.', [
    field,
  ]);
}

function sharedBits(a: FieldLocation, b: FieldLocation): Omit<FieldLocation, 'signed'> | null {
  const start = Math.min(a.bitOffset, b.bitOffset);
  const end = Math.max(a.bitOffset + a.bitSize, b.bitOffset + b.bitSize);
  const apart = end - start >= a.bitSize + b.bitSize;
  if (a.reportId !== b.reportId || apart || end - start > MAX_AXIS_BITS) return null;
  return { reportId: a.reportId, bitOffset: start, bitSize: end - start };
}

function valuesOf(reports: Reports, field: FieldLocation): Float64Array {
  const read = compileField(field);
  const values = reports.map((report) => read(report, 0, report.length));
  return Float64Array.from(values.filter((value) => value !== null));
}

function restOf(rest: Reports, moved: Reports, field: FieldLocation): number {
  const values = valuesOf(rest, field).toSorted();
  return values[Math.floor(values.length / 2)] ?? valuesOf(moved, field)[0]!;
}

function furthest(values: Float64Array, from: number): number {
  return values.reduce((best, v) => (Math.abs(v - from) > Math.abs(best - from) ? v : best), from);
}
