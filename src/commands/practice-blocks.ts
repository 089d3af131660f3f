import { summaryOfReps } from '../drill/block-summary.ts';
import type { DiagnosedRep } from '../drill/diagnosis/diagnosed-rep.ts';
import { targetCoupling } from '../drill/diagnosis/steering-coupling.ts';
import { plainId } from '../drill/plan/varied-target.ts';
import type { HistoryStore, StoredRep } from '../history/store.ts';
import type { BlockReview, DrawnBlock, ReviewedRep } from '../report/review/practice-review.ts';
import type { TextUnits } from '../unit-text.ts';
import { blockRuler, type Ruler } from './block-ruler.ts';
import { isPlainRep } from './plain-rep.ts';
import { type ReadRep, readRep } from './read-rep.ts';
import type { StoredSubjects } from './stored-subject.ts';
import { wordsOfReps } from './words-of-reps.ts';

/** Where reps come from, and who hears how far their reading is. */
interface BlockSource {
  readonly history: HistoryStore;
  readonly subjects: StoredSubjects;
  readonly units: TextUnits;
  onRep(): void;
}

/** The reps of a practice block by block, in each target by target, as they were driven. */
export async function practiceBlocks(
  reps: readonly StoredRep[],
  source: BlockSource,
): Promise<BlockReview[]> {
  const words = wordsOfReps(reps, source.units);
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
  const own = isPlainRep(rep) ? targetId : plainId(targetId);
  return JSON.stringify([block, phase, live === null ? own : [car, corner, variant]]);
}

async function blockOf(
  reps: readonly StoredRep[],
  words: ReadonlyMap<number, string>,
  source: BlockSource,
): Promise<BlockReview> {
  const first = reps.find(isPlainRep) ?? reps[0]!;
  const ruler = await blockRuler(first, source.subjects);
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

function drawnBlock(
  read: readonly ReadRep[],
  { target, along }: Ruler,
  units: TextUnits,
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
