import type { DrillHooks } from './drill-hooks.ts';
import type { PracticeLog } from './practice-log.ts';

/** Lets a practice's log take what a drill wants written down. */
export function logHooks(
  log: PracticeLog,
): Required<Pick<DrillHooks, 'store' | 'rate' | 'note' | 'noteText'>> {
  return {
    store: (rep) => log.add(rep),
    rate: (rep, rating) => log.rate(rep, rating),
    note: (rep) => log.mark(rep),
    noteText: (rep, text) => log.say(rep, text),
  };
}
