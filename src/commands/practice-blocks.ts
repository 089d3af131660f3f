import { summaryOfReps } from '../drill/block-summary.ts';
import { blockGrid } from '../drill/diagnosis/block-grid.ts';
import type { DiagnosedRep } from '../drill/diagnosis/diagnosed-rep.ts';
import { gridPlacesM } from '../drill/diagnosis/grid-places.ts';
import { liveRepCurve } from '../drill/diagnosis/live-rep-curve.ts';
import { pacedRepCurve } from '../drill/diagnosis/paced-rep-curve.ts';
import { repCurve } from '../drill/diagnosis/rep-curve.ts';
import {
  repCoupling,
  type SteeringCoupling,
  targetCoupling,
} from '../drill/diagnosis/steering-coupling.ts';
import { plainId } from '../drill/plan/varied-target.ts';
import type { HistoryStore, StoredRep } from '../history/store.ts';
import { type Along, alongTime } from '../report/picture/block-axis.ts';
import type { BlockReview, DrawnBlock, ReviewedRep } from '../report/review/practice-review.ts';
import { adviceBands, BAND_REPS } from '../score/advice-bands.ts';
import { describeOutcome } from '../score/describe-outcome.ts';
import type { RepOutcome, RepScore } from '../score/rep-score.ts';
import type { SpokenUnits } from '../score/slowest-speed.ts';
import { pacedStretch } from '../target/paced-stretch.ts';
import type { Target } from '../target/target.ts';
import type { RepRecord } from '../trace/rep-record.ts';
import type { Rebuilt, StoredSubjects } from './stored-subject.ts';

/** Where reps come from, and who hears how far their reading is. */
interface BlockSource {
  readonly history: HistoryStore;
  readonly subjects: StoredSubjects;
  readonly units: SpokenUnits;
  onRep(): void;
}

/** The reps of a practice block by block, in each target by target, as they were driven. */
export async function practiceBlocks(
  reps: readonly StoredRep[],
  source: BlockSource,
): Promise<BlockReview[]> {
  const words = wordsOf(reps, source.units);
  const groups = new Map<string, StoredRep[]>();
  for (const rep of reps) {
    const own = groups.get(groupOf(rep));
    if (own === undefined) groups.set(groupOf(rep), [rep]);
    else own.push(rep);
  }
  const blocks: BlockReview[] = [];
  for (const own of groups.values()) blocks.push(await blockOf(own, words, source));
  return blocks;
}

/** Varied reps and those with a late call stand with those of the target the driver prepared for. */
function groupOf(rep: StoredRep): string {
  const { block, phase, car, corner, variant, live, targetId } = rep;
  const own = isPlain(rep) ? targetId : plainId(targetId);
  return JSON.stringify([block, phase, live === null ? own : [car, corner, variant]]);
}

async function blockOf(
  reps: readonly StoredRep[],
  words: ReadonlyMap<number, string>,
  source: BlockSource,
): Promise<BlockReview> {
  const first = reps.find(isPlain) ?? reps[0]!;
  const ruler = await rulerOf(first, source.subjects);
  const read: ReadRep[] = [];
  for (const rep of reps) {
    read.push(await readRep(rep, ruler.kind === 'rebuilt' ? ruler.value : null, source));
    source.onRep();
  }
  return {
    block: first.block,
    phase: first.phase,
    targetId: first.targetId,
    targetName: ruler.kind === 'rebuilt' ? ruler.value.target.name : await nameOf(first, source),
    reps: read.map((one) => reviewed(one, words.get(one.rep.id) ?? '')),
    drawn:
      ruler.kind === 'rebuilt'
        ? drawnBlock(read, ruler.value, source.units)
        : { kind: 'not drawn', reason: ruler.reason },
  };
}

/** Varied reps have no ruler, but a name all the same; its id where the file is gone. */
async function nameOf(rep: StoredRep, { subjects }: BlockSource): Promise<string> {
  if (rep.live !== null) return rep.targetId;
  const found = await subjects.target(rep);
  return found.kind === 'rebuilt' ? found.value.name : rep.targetId;
}

/** What the reps of a block are laid on. */
interface Ruler {
  readonly target: Target;
  readonly along: Along;
}

/** With the live car the zone at the temperatures of its file: those of the reps differ. */
async function rulerOf(rep: StoredRep, subjects: StoredSubjects): Promise<Rebuilt<Ruler>> {
  if (!isPlain(rep))
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

interface ReadRep {
  readonly rep: StoredRep;
  readonly outcome: RepOutcome | null;
  readonly curve: Float64Array | null;
  readonly coupling: SteeringCoupling | null;
}

async function readRep(
  rep: StoredRep,
  ruler: Ruler | null,
  { history, subjects }: BlockSource,
): Promise<ReadRep> {
  const outcome = rep.voided === null ? (rep.outcomes.at(-1) ?? null) : null;
  if (outcome?.kind !== 'scored') return { rep, outcome, curve: null, coupling: null };
  const record = history.record(rep.id);
  const curve =
    ruler === null || !isPlain(rep) ? null : await curveOf(rep, record, outcome, ruler, subjects);
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

function drawnBlock(
  read: readonly ReadRep[],
  { target, along }: Ruler,
  units: SpokenUnits,
): DrawnBlock {
  const diagnosed = read.map(
    ({ rep, outcome, curve }, i): DiagnosedRep => ({
      place: i + 1,
      feedback: rep.feedback,
      voided: rep.voided,
      outcome,
      curve,
    }),
  );
  return {
    kind: 'drawn',
    summary: summaryOfReps(diagnosed, target, units),
    units,
    along,
    target: targetCoupling(target),
  };
}

function reviewed({ rep, outcome, curve, coupling }: ReadRep, words: string): ReviewedRep {
  return {
    number: rep.number,
    feedback: rep.feedback,
    voided: rep.voided,
    outcome,
    words,
    call: rep.live?.call ?? null,
    selfRating: rep.selfRating,
    isDrawn: curve !== null,
    coupling,
  };
}

/** Driven against just the target that was prepared for. */
function isPlain({ targetId, targetChange, live }: StoredRep): boolean {
  if (live !== null) return live.call === null;
  return targetChange === null ? plainId(targetId) === targetId : targetChange.kind !== 'varied';
}

/** What to tell the driver about each rep, with bands from the reps of the practice before it. */
function wordsOf(reps: readonly StoredRep[], units: SpokenUnits): Map<number, string> {
  const before: RepOutcome[] = [];
  const words = new Map<number, string>();
  for (const { id, voided, outcomes } of reps) {
    const outcome = voided === null ? outcomes.at(-1) : undefined;
    if (outcome === undefined) continue;
    words.set(id, describeOutcome(outcome, adviceBands(before.slice(-BAND_REPS)), units));
    before.push(outcome);
  }
  return words;
}
