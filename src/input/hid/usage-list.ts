import type { UsageRange } from './report-field.ts';

/** Usage page and usage id as one unsigned 32-bit number. */
export function joinUsage(page: number, id: number): number {
  return page * 0x10000 + id;
}

/** Page of a joined usage. */
export function usagePageOf(usage: number): number {
  return Math.floor(usage / 0x10000);
}

/** Id of a joined usage. */
export function usageIdOf(usage: number): number {
  return usage % 0x10000;
}

/** One usage per element: the last one repeats when the list is short, and what is over is left (6.2.2.8). */
export function spreadUsages(usages: readonly UsageRange[], count: number): Float64Array {
  const spread = new Float64Array(count);
  let filled = 0;
  for (const { first, last } of usages)
    for (let usage = first; usage <= last && filled < count; usage++) spread[filled++] = usage;
  if (filled > 0) spread.fill(spread[filled - 1]!, filled);
  return spread;
}
