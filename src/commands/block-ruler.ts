import { blockGrid } from '../drill/diagnosis/block-grid.ts';
import { gridPlacesM } from '../drill/diagnosis/grid-places.ts';
import type { StoredRep } from '../history/store.ts';
import { type Along, alongTime } from '../report/picture/block-axis.ts';
import type { Target } from '../target/target.ts';
import { isPlainRep } from './plain-rep.ts';
import type { Rebuilt, StoredSubjects } from './stored-subject.ts';

/** What the reps of a block are laid on. */
export interface Ruler {
  readonly target: Target;
  readonly along: Along;
}

/** With the live car the zone at the temperatures of its file: those of the reps differ. */
export async function blockRuler(
  rep: StoredRep,
  subjects: StoredSubjects,
): Promise<Rebuilt<Ruler>> {
  if (!isPlainRep(rep))
    return { kind: 'lost', reason: 'every rep has a target of its own, varied or called late' };
  if (rep.live === null) {
    const found = await subjects.target(rep);
    if (found.kind === 'lost') return found;
    const target = found.value;
    return { kind: 'rebuilt', value: { target, along: alongTime(blockGrid(target)) } };
  }
  const zone = await subjects.zone(rep, 'cold');
  if (zone.kind === 'lost') return zone;
  const { target } = zone.value;
  const at = gridPlacesM(zone.value, blockGrid(target));
  return { kind: 'rebuilt', value: { target, along: { unit: 'm', at } } };
}
