import type { RepRecord } from '../../trace/rep-record.ts';

/**
 * Whether a rep was hard: the brake reached this level at any time, whatever the target asked for and however the rep
 * ended. It is the leg that tires, so what was pressed counts.
 */
export function isHardRep({ brake }: Pick<RepRecord, 'brake'>, fromLevel: number): boolean {
  return brake.value.some((level) => level >= fromLevel);
}
