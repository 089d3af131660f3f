import { compileField } from '../../hid/compile-field.ts';
import type { FieldLocation } from '../../hid/report-field.ts';
import type { Taped } from './report-tape.ts';

/** What a field read, with its times. */
interface TapedCounts {
  readonly timeUs: readonly number[];
  readonly counts: readonly number[];
}

export function tapedCounts(taped: Taped, device: number, field: FieldLocation): TapedCounts {
  const read = compileField(field);
  const samples = taped.flatMap((report) => {
    if (report.device !== device) return [];
    const counts = read(report.bytes, 0, report.bytes.length);
    return counts === null ? [] : [{ timeUs: report.timeUs, counts }];
  });
  return { timeUs: samples.map((s) => s.timeUs), counts: samples.map((s) => s.counts) };
}

/** A peak shorter than this in total is a glitch, not a foot. */
const HELD_US = 50_000;

/**
 * The count furthest from rest that was reached for 50 ms in total, each value holding until the next; null where the
 * field said nothing.
 * @param towards 1 for an axis that counts up when it is moved, -1 for one that counts down
 */
export function heldExtreme({ timeUs, counts }: TapedCounts, towards: 1 | -1): number | null {
  const spells = counts
    .map((value, i) => ({ value, us: (timeUs[i + 1] ?? timeUs[i]!) - timeUs[i]! }))
    .sort((a, b) => towards * (b.value - a.value));
  let heldUs = 0;
  for (const { value, us } of spells) {
    heldUs += us;
    if (heldUs >= HELD_US) return value;
  }
  return spells.at(-1)?.value ?? null;
}

const SETTLED_US = 500_000;

/** The middle count of the last half second; null where the field said nothing in it. */
export function settledCounts({ timeUs, counts }: TapedCounts): number | null {
  const fromUs = (timeUs.at(-1) ?? 0) - SETTLED_US;
  const settled = counts.filter((_, i) => timeUs[i]! >= fromUs).sort((a, b) => a - b);
  return settled[settled.length >> 1] ?? null;
}
