import type { PracticeValues } from '../consistency/weeks/practice-values.ts';
import { blockGrid } from '../drill/diagnosis/block-grid.ts';
import { repCurve } from '../drill/diagnosis/rep-curve.ts';
import {
  type LatestSpread,
  type PracticeSpread,
  practiceSpread,
} from '../drill/diagnosis/spread-curve.ts';
import type { HistoryStore, StoredRep } from '../history/store.ts';
import { Problem } from '../problem.ts';
import { overTime } from '../target/over-time.ts';
import type { Target } from '../target/target.ts';
import { notInFolders } from './given-target.ts';
import { profileIds } from './profile-files.ts';
import { findTarget, TARGET_FILES } from './target-files.ts';

/**
 * The spread curve of a practice's hidden reps, from their samples.
 *
 * @param given targets that are not in the usual folders
 */
export async function drivenSpread(
  history: HistoryStore,
  { practiceId, day, hidden }: Pick<PracticeValues, 'practiceId' | 'day' | 'hidden'>,
  dataDir: string,
  given: readonly Target[],
): Promise<LatestSpread> {
  const stored = [...history.reps({ practiceId })].filter(({ id }) => hidden.repIds.includes(id));
  const newest = stored.at(-1);
  if (newest === undefined) return none('its reps cannot be read');
  if (newest.live !== null) {
    // cars and corners take as long to load as all the rest
    const { liveSpread } = await import('./live-spread.ts');
    return liveSpread(history, stored, day, dataDir);
  }
  const target = await targetOf(newest, dataDir, given);
  if (typeof target === 'string') return none(target);
  const { id, version } = target;
  if (version !== newest.targetVersion)
    return none(`target ${id} has been changed since it was driven`);
  const curve = curveOf(history, stored, target, day);
  return curve === null
    ? none('too few reps can be laid over each other')
    : { kind: 'curve', curve };
}

/** By the target's files alone; in words why it cannot be had. */
async function targetOf(
  { targetId }: StoredRep,
  dataDir: string,
  given: readonly Target[],
): Promise<Target | string> {
  const named = given.find(({ id }) => id === targetId);
  if (named === undefined && !(await profileIds(TARGET_FILES, dataDir)).includes(targetId))
    return notInFolders(targetId);
  try {
    return overTime(named ?? (await findTarget(targetId, dataDir)));
  } catch (error) {
    if (error instanceof Problem) return error.message;
    throw error;
  }
}

function curveOf(
  history: HistoryStore,
  reps: readonly StoredRep[],
  target: Target,
  day: string,
): PracticeSpread | null {
  const grid = blockGrid(target);
  const curves = reps.flatMap(({ id, outcomes }) => {
    const outcome = outcomes.at(-1);
    return outcome?.kind === 'scored' ? [repCurve(history.brake(id), outcome, grid)] : [];
  });
  return practiceSpread(day, curves, grid);
}

function none(reason: string): LatestSpread {
  return { kind: 'none', reason };
}
