import { BAND_REPS } from '../../score/advice-bands.ts';
import type { RepOutcome } from '../../score/rep-score.ts';
import type { RepRecord } from '../../trace/rep-record.ts';
import type { RepTag } from '../drill-message.ts';
import { fatigue } from './fatigue.ts';
import { isHardRep } from './hard-rep.ts';
import type { RepCounts } from './plan-feedback.ts';
import type { PracticeZone } from './planned-practice.ts';
import type { HardReps } from './practice-plan.ts';

/** What was done on one zone in this practice. */
interface ZoneProgress {
  readonly reps: number;
  /** Shown reps of the blocks without a hidden one since. */
  readonly shownInARow: number;
  /** Release errors of the blocks' scored reps, in order, as levels. */
  readonly errors: readonly number[];
  /** How many of the last reps in a row were each beyond the fatigue limit. */
  readonly beyondLimit: number;
  /** Outcomes of all scored reps, in order. */
  readonly outcomes: readonly RepOutcome[];
}

/** How far a planned practice has come. Never changed; each rep gives a new one. */
export interface PlanProgress {
  readonly zones: ReadonlyMap<PracticeZone, ZoneProgress>;
  /** Whatever became of them. */
  readonly hardReps: number;
}

export const NO_PROGRESS: PlanProgress = { zones: new Map(), hardReps: 0 };

const NOTHING: ZoneProgress = { reps: 0, shownInARow: 0, errors: [], beyondLimit: 0, outcomes: [] };

export function zoneProgress({ zones }: PlanProgress, zone: PracticeZone): ZoneProgress {
  return zones.get(zone) ?? NOTHING;
}

/** What came before the next rep of a zone, as its feedback is planned by. */
export function repCounts(progress: PlanProgress, zone: PracticeZone): RepCounts {
  const { reps, shownInARow } = zoneProgress(progress, zone);
  return { inLife: zone.repsInLife + reps, inPractice: reps, shownInARow };
}

/** A rep is over. @param counts false for one that was lost with its device and is driven again */
export function afterRep(
  progress: PlanProgress,
  zone: PracticeZone,
  rep: { readonly tag: RepTag; readonly record: RepRecord; readonly counts: boolean },
  { fromLevel }: HardReps,
): PlanProgress {
  const hardReps = progress.hardReps + (isHardRep(rep.record, fromLevel) ? 1 : 0);
  if (!rep.counts) return { ...progress, hardReps };
  const before = zoneProgress(progress, zone);
  const { phase, feedback } = rep.tag;
  const shown = phase === 'block' && feedback === 'shown';
  const next = {
    ...before,
    reps: before.reps + 1,
    shownInARow: shown ? before.shownInARow + 1 : 0,
  };
  return { zones: new Map(progress.zones).set(zone, next), hardReps };
}

/** A rep has its outcome. Only the reps of the blocks say something about fatigue. */
export function afterScore(
  progress: PlanProgress,
  zone: PracticeZone,
  tag: RepTag,
  outcome: RepOutcome,
  { fatigueLimit }: HardReps,
): PlanProgress {
  const before = zoneProgress(progress, zone);
  const measured = tag.phase === 'block' && outcome.kind === 'scored';
  const errors = measured ? [...before.errors, outcome.releaseErrorLevel] : before.errors;
  const found = measured ? fatigue(errors, fatigueLimit, zone.reference) : null;
  const beyond = found === null ? 0 : before.beyondLimit + 1;
  const next = {
    ...before,
    errors,
    beyondLimit: measured ? beyond : before.beyondLimit,
    outcomes: [...before.outcomes, outcome],
  };
  return { ...progress, zones: new Map(progress.zones).set(zone, next) };
}

/** The last outcomes of a zone, by which the driver's own spread is judged. */
export function recentOutcomes(progress: PlanProgress, zone: PracticeZone): readonly RepOutcome[] {
  return [...zone.recent, ...zoneProgress(progress, zone).outcomes].slice(-BAND_REPS);
}
