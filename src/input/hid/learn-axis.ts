import { type ControlRecording, type Refusal, type Reports, refuse } from './control-recording.ts';
import { type MovingField, movingAmong, searchMovingFields } from './moving-fields.ts';
import type { FieldLocation } from './report-field.ts';
import { possibleNumberings } from './report-numbering.ts';
import { type BitRange, readSeries, reportStreams } from './report-stream.ts';
import { seriesShape } from './series-shape.ts';
import { whyNoAxis } from './why-no-axis.ts';

/** Where a control was found and how its counts go. */
export interface LearnedAxis {
  readonly kind: 'axis';
  readonly field: FieldLocation;
  /** Counts at rest: the median, or the first count for a device that is silent at rest. */
  readonly restCounts: number;
  /** Counts furthest from rest; for a control that goes both ways, those of the longer one. */
  readonly fullCounts: number;
  readonly minCounts: number;
  readonly maxCounts: number;
  /** Largest less smallest count at rest; null for a device that is silent at rest. */
  readonly noiseCounts: number | null;
  /** The counts fall when the control is moved. */
  readonly inverted: boolean;
  /** Rests inside its range: a wheel, or two pedals on one axis. */
  readonly centred: boolean;
  /** Other fields that repeat this one, such as a coarser copy. */
  readonly copies: readonly FieldLocation[];
}

/**
 * Finds the field that one control moves: 8 to 16 bits anywhere in the report, little-endian, signed or not, between
 * neighbours that make noise, count or hold buttons. Counters, timestamps and checksums tear or never turn back, and
 * neighbours' bits do not carry; see `isNextDigit`. Pure; work grows with bits times reports.
 * A field that repeats another one exactly is a copy, of which the finest is taken.
 * @returns a refusal where nothing or too little moved, more than one control did, or the recording is too noisy to tell
 */
export function learnAxis(recording: ControlRecording): LearnedAxis | Refusal {
  if (recording.moved.length === 0)
    return refuse('no-reports', 'The device sent nothing. Move the control while it records.');
  const results = possibleNumberings(recording).map((numbered) => learn(recording, numbered));
  return results.find(({ kind }) => kind === 'axis') ?? results[0]!;
}

function learn(recording: ControlRecording, numbered: boolean): LearnedAxis | Refusal {
  const { fields } = recording;
  const streams = reportStreams(recording, numbered);
  const found = streams.flatMap((stream) =>
    fields === null ? searchMovingFields(stream) : movingAmong(stream, fields),
  );
  const [first, ...rest] = found.sort(likelierFirst);
  if (first === undefined) return whyNoAxis(streams);
  const rivals = rest.filter((other) => !isSideEffect(other, first));
  if (rivals.every((other) => isCopy(other, first))) return axisOf(bestFirst([first, ...rivals]));
  if (rivals.every((other) => goesWith(other, first, COPY_TOLERANCE)))
    return refuse(
      'alike',
      'Two controls moved almost alike. Move one alone; where they are linked, unlink them.',
      [first, ...rivals].map(locationOf),
    );
  return refuse(
    'several-moved',
    'More than one control moved. Move one alone and hold the others still.',
    [first, ...rivals].map(locationOf),
  );
}

/** Of fields that repeat each other: the one that stays still with other controls, then the finest. */
function bestFirst(copies: readonly MovingField[]): readonly MovingField[] {
  const strays = (field: MovingField): number =>
    field.stream.others.filter((reports) => spanIn(reports, field) > JOG_SHARE * field.shape.span)
      .length;
  return [...copies].sort((a, b) => strays(a) - strays(b) || b.shape.span - a.shape.span);
}

function axisOf([best, ...copies]: readonly MovingField[]): LearnedAxis {
  const { stream, range, shape } = best!;
  const atRest = readSeries(stream.rest, range);
  const restCounts = median(atRest) ?? readSeries(stream.moved, range)[0]!;
  const [below, above] = [restCounts - shape.min, shape.max - restCounts];
  const fullCounts = above >= below ? shape.max : shape.min;
  return {
    kind: 'axis',
    field: locationOf(best!),
    restCounts,
    fullCounts,
    minCounts: shape.min,
    maxCounts: shape.max,
    noiseCounts: atRest.length === 0 ? null : seriesShape(atRest).span,
    inverted: fullCounts < restCounts,
    centred: Math.min(below, above) > CENTRED_SHARE * shape.span || isMiddle(restCounts, range),
    copies: copies.map(locationOf),
  };
}

/** A control that goes this share of its span to either side rests inside it. */
const CENTRED_SHARE = 0.25;

/** True in the middle fifth of all values the bits can hold. */
function isMiddle(counts: number, { bitSize, signed }: BitRange): boolean {
  const place = counts / 2 ** bitSize + (signed ? 0.5 : 0);
  return Math.abs(place - 0.5) <= 0.1;
}

function median(values: Float64Array): number | null {
  return values.toSorted()[Math.floor(values.length / 2)] ?? null;
}

function locationOf({ stream, range }: MovingField): FieldLocation {
  return { reportId: stream.reportId, ...range };
}

/** A control that is jogged along, as the wheel under a heavy foot, hardly moves next to what moved most. */
const JOG_SHARE = 0.1;
/** A field that goes this many times further while another control is moved belongs to that one. */
const ELSEWHERE_FACTOR = 4;

function isSideEffect(other: MovingField, first: MovingField): boolean {
  if (other.share < JOG_SHARE * first.share && other.shape.span < first.shape.span) return true;
  if (tearsElsewhere(other)) return true;
  return other.stream.others.some(
    (reports) => spanIn(reports, other) >= ELSEWHERE_FACTOR * other.shape.span,
  );
}

/** A checksum follows a control while all else rests, and jumps about while another one is moved. */
function tearsElsewhere({ stream, range, shape }: MovingField): boolean {
  return stream.others.some((reports) => {
    const { span, largestStep } = seriesShape(readSeries(reports, range));
    return largestStep > span / 2 && span >= shape.span;
  });
}

/** What tears comes last; then what moved most of its range, then the finest. */
function likelierFirst(a: MovingField, b: MovingField): number {
  return (
    Number(tearsElsewhere(a)) - Number(tearsElsewhere(b)) ||
    b.share - a.share ||
    b.shape.span - a.shape.span
  );
}

function spanIn(reports: Reports, { range }: MovingField): number {
  return seriesShape(readSeries(reports, range)).span;
}

/** Root mean square difference, in shares of their spans, up to which two fields may go with one control. */
const COPY_TOLERANCE = 0.03;
/** Beyond the steps of both, what 99 of 100 reports of a copy may differ: two feet never keep together that well. */
const COPY_EXACT = 0.003;

/** True where a field repeats another one of its report to within the steps of both, or its exact opposite. */
function isCopy(other: MovingField, first: MovingField): boolean {
  const steps = 1 / other.shape.span + 1 / first.shape.span;
  return (
    goesWith(other, first, COPY_TOLERANCE) && difference(other, first, p99) <= COPY_EXACT + steps
  );
}

/** True where two fields of one report go in lockstep, or in opposition. */
function goesWith(other: MovingField, first: MovingField, tolerance: number): boolean {
  return other.stream === first.stream && difference(other, first, rms) <= tolerance;
}

/** How far apart two fields are, each scaled to its own span, the other way round where that is nearer. */
function difference(
  other: MovingField,
  first: MovingField,
  size: (values: Float64Array) => number,
): number {
  const [a, b] = [scaled(other), scaled(first)];
  return Math.min(size(a.map((v, i) => v - b[i]!)), size(a.map((v, i) => v + b[i]! - 1)));
}

function scaled({ stream, range, shape }: MovingField): Float64Array {
  return readSeries(stream.moved, range).map((value) => (value - shape.min) / shape.span);
}

function rms(values: Float64Array): number {
  return Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);
}

function p99(values: Float64Array): number {
  const sizes = values.map(Math.abs).sort();
  return sizes[Math.ceil(0.99 * sizes.length) - 1] ?? 0;
}
