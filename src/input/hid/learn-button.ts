import { type ControlRecording, type Refusal, type Reports, refuse } from './control-recording.ts';
import { bitAt } from './field-edges.ts';
import { searchMovingFields } from './moving-fields.ts';
import type { FieldLocation } from './report-field.ts';
import { possibleNumberings } from './report-numbering.ts';
import {
  type BitRange,
  isChanging,
  type ReportStream,
  readSeries,
  reportStreams,
} from './report-stream.ts';
import { changesOf } from './series-shape.ts';

/** Where a button or paddle was found. */
export interface LearnedButton {
  readonly kind: 'button';
  /** One bit. */
  readonly field: FieldLocation;
  /** 1, or 0 for a button that reports the other way round. */
  readonly pressedCounts: 0 | 1;
}

/** Far above the few presses that are asked for, far below a counter or noise. */
const MAX_CHANGES = 40;

/**
 * Finds the bit that one button or paddle switches, pressed and released at least once. A bit qualifies when it stands
 * still at rest and with other controls, switches a few times, ends as it began, and is no part of an axis that moved.
 * @returns a refusal where no bit qualifies, or several do (two buttons, a hat, a code)
 */
export function learnButton(recording: ControlRecording): LearnedButton | Refusal {
  if (recording.moved.length === 0)
    return refuse('no-reports', 'The device sent nothing. Press the button while it records.');
  const results = possibleNumberings(recording).map((numbered) => learn(recording, numbered));
  return results.find(({ kind }) => kind === 'button') ?? results[0]!;
}

function learn(recording: ControlRecording, numbered: boolean): LearnedButton | Refusal {
  const found = reportStreams(recording, numbered).flatMap((stream) =>
    bitsToTry(stream, recording.fields)
      .filter((bit) => isSwitched(stream, bit))
      .map((range) => ({ stream, field: { reportId: stream.reportId, ...range } })),
  );
  const [first] = found;
  if (first === undefined)
    return refuse('nothing-moved', 'No button changed. Press it and let it go, three times.');
  if (found.length > 1)
    return refuse(
      'several-moved',
      'More than one bit changed. Press one plain button or paddle alone, not a hat.',
      found.map(({ field }) => field),
    );
  const pressedCounts = readSeries(first.stream.moved, first.field).at(-1) === 0 ? 1 : 0;
  return { kind: 'button', field: first.field, pressedCounts };
}

function bitsToTry(stream: ReportStream, fields: readonly FieldLocation[] | null): BitRange[] {
  const axes = fields === null ? searchMovingFields(stream).map(({ range }) => range) : [];
  return Array.from({ length: stream.bits }, (_, bitOffset) => bitOffset)
    .filter((bit) => isChanging(stream, bit))
    .filter((bit) => !axes.some((axis) => holds(axis, bit)))
    .filter((bit) => fields === null || fields.some((field) => isThatBit(field, stream, bit)))
    .map(bitAt);
}

function isThatBit(field: FieldLocation, { reportId }: ReportStream, bit: number): boolean {
  return field.reportId === reportId && field.bitSize === 1 && field.bitOffset === bit;
}

function holds({ bitOffset, bitSize }: BitRange, bit: number): boolean {
  return bit >= bitOffset && bit < bitOffset + bitSize;
}

function isSwitched(stream: ReportStream, bit: BitRange): boolean {
  const moved = readSeries(stream.moved, bit);
  const still = [stream.rest, ...stream.others];
  const start = firstOf(still, bit) ?? (moved[0] === moved.at(-1) ? moved[0] : UP);
  const changes = changesOf(moved) + (moved[0] === start ? 0 : 1);
  if (changes < 2 || changes > MAX_CHANGES || moved.at(-1) !== start) return false;
  return still.every((reports) => readSeries(reports, bit).every((value) => value === start));
}

function firstOf(recordings: readonly Reports[], bit: BitRange): number | undefined {
  const said = recordings.find((reports) => reports.length > 0);
  return said && readSeries(said.slice(0, 1), bit)[0];
}

/** A device that reports on change has said nothing before the first press: its buttons are taken to be up. */
const UP = 0;
