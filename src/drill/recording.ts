import type { Gap } from '../trace/gap.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import type { ButtonEvent, RigBatch } from '../trace/rig-batch.ts';
import type { Track } from '../trace/track.ts';
import type { RigAxes } from './drill-setup.ts';

/** Value of each axis, null before it has ever moved. */
export interface Levels {
  readonly brake: number | null;
  readonly throttle: number | null;
  readonly clutch: number | null;
  readonly steering: number | null;
}

export const NO_LEVELS: Levels = { brake: null, throttle: null, clutch: null, steering: null };

interface Chunk {
  readonly batch: RigBatch;
  readonly earlier: Chunk | null;
}

/** The batches of the rep under way as a linked list, so that one more costs nothing but itself. */
export interface Recording {
  readonly startS: number;
  /** What the axes held when the first batch came. */
  readonly before: Levels;
  readonly newest: Chunk;
}

/** Seconds recorded before the cue: enough for a baseline of 0.3 s ahead of the earliest onset that counts. */
export const LEAD_S = 0.5;

export function startRecording(batch: RigBatch, before: Levels, startS: number): Recording {
  return { startS, before, newest: { batch, earlier: null } };
}

export function recordBatch(recording: Recording, batch: RigBatch): Recording {
  return { ...recording, newest: { batch, earlier: recording.newest } };
}

/** The finished record of a rep, its times counted from the cue, from `leadS` before it on. */
export function repRecord(
  recording: Recording,
  span: { readonly cueS: number; readonly endS: number },
  axes: RigAxes,
  brakeStepLevel: number,
  leadS: number = LEAD_S,
): RepRecord {
  const { cueS, endS } = span;
  const fromS = Math.max(recording.startS, Math.min(cueS, endS) - leadS);
  const axis = (name: keyof Levels) => shifted(recordedTrack(recording, name, fromS, endS), cueS);
  const batches = batchesOf(recording);
  return {
    brake: axis('brake'),
    throttle: axes.throttle ? axis('throttle') : null,
    clutch: axes.clutch ? axis('clutch') : null,
    steering: axes.steering ? axis('steering') : null,
    buttons: batches.flatMap(({ buttons }) => buttonsWithin(buttons, fromS, endS, cueS)),
    gaps: batches.flatMap(({ gaps }) => gapsWithin(gaps, fromS, endS, cueS)),
    brakeStepLevel,
    endS: endS - cueS,
  };
}

/** One axis from `fromS` to `toS` on the source's clock; it begins with the value held at `fromS`. */
export function recordedTrack(
  recording: Recording,
  axis: keyof Levels,
  fromS: number,
  toS: number,
): Track {
  const tracks = batchesOf(recording).map((batch) => batch[axis]);
  const total = tracks.reduce((sum, { timeS }) => sum + timeS.length, 0);
  const timeS = new Float64Array(total + 1);
  const value = new Float64Array(total + 1);
  const held = recording.before[axis];
  let count = 0;
  const keep = (t: number, v: number) => {
    if (t > toS) return;
    if (t <= fromS) count = 0;
    timeS[count] = Math.max(t, fromS);
    value[count++] = v;
  };
  if (held !== null) keep(fromS, held);
  for (const track of tracks) track.timeS.forEach((t, i) => void keep(t, track.value[i]!));
  return { timeS: timeS.slice(0, count), value: value.slice(0, count) };
}

/** Everything from `fromS` to `toS` as one batch; each axis begins with the value held at `fromS`. */
export function recordedBatch(recording: Recording, fromS: number, toS: number): RigBatch {
  const axis = (name: keyof Levels) => recordedTrack(recording, name, fromS, toS);
  const batches = batchesOf(recording);
  return {
    brake: axis('brake'),
    throttle: axis('throttle'),
    clutch: axis('clutch'),
    steering: axis('steering'),
    buttons: batches.flatMap(({ buttons }) => buttonsWithin(buttons, fromS, toS, 0)),
    gaps: batches.flatMap(({ gaps }) => gapsWithin(gaps, fromS, toS, 0)),
    untilS: toS,
    dropped: 0,
  };
}

/** Oldest first. */
function batchesOf({ newest }: Recording): readonly RigBatch[] {
  const batches: RigBatch[] = [];
  for (let chunk: Chunk | null = newest; chunk !== null; chunk = chunk.earlier)
    batches.push(chunk.batch);
  return batches.reverse();
}

function shifted({ timeS, value }: Track, originS: number): Track {
  return { timeS: timeS.map((t) => t - originS), value };
}

function buttonsWithin(
  buttons: readonly ButtonEvent[],
  fromS: number,
  endS: number,
  cueS: number,
): ButtonEvent[] {
  return buttons
    .filter(({ timeS }) => timeS >= fromS && timeS <= endS)
    .map((event) => ({ ...event, timeS: event.timeS - cueS }));
}

function gapsWithin(gaps: readonly Gap[], fromS: number, endS: number, cueS: number): Gap[] {
  return gaps
    .filter((gap) => gap.toS > fromS && gap.fromS < endS)
    .map((gap) => ({ fromS: gap.fromS - cueS, toS: gap.toS - cueS }));
}
