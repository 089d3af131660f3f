import type { HistorySnapshot } from '../kept.ts';

/** Of a history that was never begun. */
export const EMPTY_SNAPSHOT: HistorySnapshot = {
  counts: () => ({ practices: 0, reps: 0, notes: 0 }),
  practices: () => [],
  reps: () => [],
  notes: () => [],
  practice: () => null,
  rep: () => null,
  note: () => null,
  close: () => {},
};
