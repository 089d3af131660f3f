import { REPS_FOR_SPREAD } from '../consistency/estimate.ts';
import type { WeeksProgress } from '../consistency/weeks/weeks-progress.ts';
import { keptSpread, keptSpreadText } from '../drill/diagnosis/kept-spread.ts';
import type { LatestSpread } from '../drill/diagnosis/spread-curve.ts';
import type { HistoryStore } from '../history/store.ts';
import type { Target } from '../target/target.ts';

/**
 * The spread curve of the last practice with ten hidden reps or more since the last break. Only that practice's
 * samples are read, however long the history is, and only once: the curve is kept until one of its reps is written to,
 * whatever becomes of the target's file.
 *
 * @param given targets that are not in the usual folders
 */
export async function latestSpread(
  history: HistoryStore,
  series: WeeksProgress,
  dataDir: string,
  given: readonly Target[] = [],
): Promise<LatestSpread> {
  const { latest } = series;
  if (latest === null)
    return { kind: 'none', reason: `no practice with ${REPS_FOR_SPREAD} hidden reps yet` };
  const { repIds } = latest.hidden;
  const name = nameOf(series);
  const kept = keptSpread(history.keptAnswer(name) ?? '', repIds);
  if (kept !== null) return { kind: 'curve', curve: kept };
  // to drive reps again takes targets, cars and corners, which take longer to load than all the rest
  const { drivenSpread } = await import('./driven-spread.ts');
  const found = await drivenSpread(history, latest, dataDir, given);
  if (found.kind === 'curve')
    history.keepAnswer(name, latest.practiceId, keptSpreadText(found.curve, repIds));
  return found;
}

function nameOf({ driver, targetId, source, foot, condition }: WeeksProgress): string {
  return `spread ${JSON.stringify([driver, targetId, source, foot, condition])}`;
}
