import { blockGrid } from '../drill/diagnosis/block-grid.ts';
import { gridPlacesM } from '../drill/diagnosis/grid-places.ts';
import { liveRepCurve } from '../drill/diagnosis/live-rep-curve.ts';
import { type LatestSpread, practiceSpread } from '../drill/diagnosis/spread-curve.ts';
import type { HistoryStore, StoredRep } from '../history/store.ts';
import { StoredSubjects } from './stored-subject.ts';

/**
 * The spread curve of reps with the live car: each is driven again from its samples, and laid place by place over what
 * the grip allowed at the speed it had, on the target at the temperatures of the car's file.
 *
 * @param reps hidden ones of one practice and one target, newest last
 * @param day local date of the practice
 */
export async function liveSpread(
  history: HistoryStore,
  reps: readonly StoredRep[],
  day: string,
  dataDir: string,
): Promise<LatestSpread> {
  const subjects = new StoredSubjects(dataDir);
  const ruler = await subjects.zone(reps.at(-1)!, 'cold');
  if (ruler.kind === 'lost') return none(ruler.reason);
  const grid = blockGrid(ruler.value.target);
  const curves: Float64Array[] = [];
  for (const rep of reps) {
    const outcome = rep.outcomes.at(-1);
    if (outcome?.kind !== 'scored' || rep.live?.call !== null) continue;
    const zone = await subjects.zone(rep);
    if (zone.kind === 'lost') return none(zone.reason);
    curves.push(liveRepCurve(history.record(rep.id), outcome, zone.value, grid));
  }
  const curve = practiceSpread(day, curves, grid, gridPlacesM(ruler.value, grid));
  return curve === null
    ? none('too few reps can be laid over each other')
    : { kind: 'curve', curve };
}

function none(reason: string): LatestSpread {
  return { kind: 'none', reason };
}
