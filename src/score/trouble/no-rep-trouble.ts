import { fault, first } from '../fault.ts';
import { NO_REP_WORDS } from '../no-rep-words.ts';
import type { NoRepReason, RepOutcome } from '../rep-score.ts';
import { sharedGroup } from '../shared-group.ts';
import type { FoundTrouble } from './found-trouble.ts';

/** A rep that is none loses all there is. */
const ALL_POINTS = 100;

/** What a foot can do about it; null where it is no matter of the foot. */
const CHANGES: Readonly<Record<NoRepReason, string | null>> = {
  'never braked': 'brake when the cue comes',
  'peak below a tenth of the target': 'press the brake up to the target',
  'too few samples': null,
  'wheel never turned in': 'turn the wheel in: it paces the target',
  'braked too late': 'brake earlier, so that the corner can be made',
  'stopped before the release': 'ease off before the car stops',
};

/** Why three reps or more were none, where that is something to do better. */
export function noRepTrouble(outcomes: readonly RepOutcome[]): FoundTrouble | null {
  const reasons = outcomes.flatMap((outcome) =>
    outcome.kind === 'no-rep' && CHANGES[outcome.reason] !== null ? outcome.reason : [],
  );
  const shared = sharedGroup(reasons, (reason) => reason);
  if (shared === null) return null;
  return {
    part: 'no rep',
    fault: first(fault(NO_REP_WORDS[shared[0]])),
    change: CHANGES[shared[0]]!,
    lost: ALL_POINTS * shared.length,
    reps: shared.length,
    of: outcomes.length,
  };
}
