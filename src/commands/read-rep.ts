import { blockGrid } from '../drill/diagnosis/block-grid.ts';
import { liveRepCurve } from '../drill/diagnosis/live-rep-curve.ts';
import { pacedRepCurve } from '../drill/diagnosis/paced-rep-curve.ts';
import { repCurve } from '../drill/diagnosis/rep-curve.ts';
import { repCoupling, type SteeringCoupling } from '../drill/diagnosis/steering-coupling.ts';
import type { HistoryStore, StoredRep } from '../history/store.ts';
import type { RepOutcome, RepScore } from '../score/rep-score.ts';
import { pacedStretch } from '../target/paced-stretch.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import type { Ruler } from './block-ruler.ts';
import { isPlainRep } from './plain-rep.ts';
import type { StoredSubjects } from './stored-subject.ts';

/** A stored rep with what is drawn of it; null where it was not scored or is laid on nothing. */
export interface ReadRep {
  readonly rep: StoredRep;
  readonly outcome: RepOutcome | null;
  readonly curve: Float64Array | null;
  readonly coupling: SteeringCoupling | null;
}

/** @param ruler null where its block has none */
export async function readRep(
  rep: StoredRep,
  ruler: Ruler | null,
  { history, subjects }: { readonly history: HistoryStore; readonly subjects: StoredSubjects },
): Promise<ReadRep> {
  const outcome = rep.voided === null ? (rep.outcomes.at(-1) ?? null) : null;
  if (outcome?.kind !== 'scored') return { rep, outcome, curve: null, coupling: null };
  const record = history.record(rep.id);
  const curve =
    ruler === null || !isPlainRep(rep)
      ? null
      : await curveOf(rep, record, outcome, ruler, subjects);
  return { rep, outcome, curve, coupling: repCoupling(record, outcome) };
}

/** Null for a rep that was driven on another version of the target. */
async function curveOf(
  rep: StoredRep,
  record: RepRecord,
  outcome: RepScore,
  { target }: Ruler,
  subjects: StoredSubjects,
): Promise<Float64Array | null> {
  if (rep.targetVersion !== target.version) return null;
  const grid = blockGrid(target);
  if (rep.live === null) {
    const stretch = rep.targetChange === null ? null : pacedStretch(target);
    return stretch === null
      ? repCurve(record.brake, outcome, grid)
      : pacedRepCurve(record, outcome, grid, stretch);
  }
  const zone = await subjects.zone(rep);
  return zone.kind === 'lost' ? null : liveRepCurve(record, outcome, zone.value, grid);
}
