import type { ControlRecording } from './control-recording.ts';

/** More kinds of report than any pedal has. */
const MAX_IDS = 8;

/**
 * The readings of byte 0 worth trying, the likelier one first: data, or report id. A first byte of few values, none of
 * them 0, can be either (a hat at rest with one button looks like two ids); lengths that go with it settle it.
 */
export function possibleNumberings(recording: ControlRecording): readonly boolean[] {
  if (recording.numbered !== null) return [recording.numbered];
  const lengths = lengthsByFirstByte(recording);
  const mayBeIds = lengths.size > 1 && lengths.size <= MAX_IDS && !lengths.has(0);
  if (!mayBeIds) return [false];
  const perId = [...lengths.values()];
  const settled =
    perId.every((set) => set.size === 1) && new Set(perId.flatMap((set) => [...set])).size > 1;
  return settled ? [true] : [false, true];
}

function lengthsByFirstByte(recording: ControlRecording): Map<number, Set<number>> {
  const lengths = new Map<number, Set<number>>();
  for (const report of [recording.rest, recording.moved, ...recording.others].flat()) {
    const first = report[0] ?? 0;
    lengths.set(first, (lengths.get(first) ?? new Set()).add(report.length));
  }
  return lengths;
}
