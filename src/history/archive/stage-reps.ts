import { encodeRecord } from '../codec/encode-record.ts';
import type { HistorySnapshot, KeptRep } from '../kept.ts';
import { REPS } from './archive-format.ts';
import { archiveLines } from './archive-lines.ts';
import { canonicalJson } from './canonical-json.ts';
import { damagedArchive } from './damaged-archive.ts';
import { type RepLine, repShape } from './line-formats.ts';
import { DIFFERS, type MergeTally } from './merge-report.ts';
import type { Archive } from './open-archive.ts';
import { recordOfSamples, samplesJson } from './samples-json.ts';
import type { StageOptions } from './stage-options.ts';
import { expectCount, quotedId, type StagedIds, takeId } from './staged-ids.ts';

/** Stages the reps that are not here yet, and the ratings and outcomes that those which are do not have. */
export async function stageReps(
  archive: Archive,
  here: HistorySnapshot,
  tally: MergeTally,
  { practices, stage, repDone }: StageOptions & { readonly practices: StagedIds },
): Promise<StagedIds> {
  const [all, refused] = [new Set<string>(), new Set<string>()];
  for await (const line of archiveLines<RepLine>(archive, REPS, repShape)) {
    takeId(all, line.id, archive, REPS);
    if (!practices.all.has(line.practice))
      throw damagedArchive(`the practice of rep ${quotedId(line.id)} is missing`, archive.path);
    const known = here.rep(line.id);
    if (known !== null) extendRep(line, known, tally, stage);
    else if (practices.refused.has(line.practice)) {
      refused.add(line.id);
      tally.conflict('rep', line.id, 'its practice is another one here');
    } else {
      addRep(line, stage);
      tally.count('rep', 'added');
    }
    repDone();
  }
  expectCount(all, archive.manifest.counts.reps, archive, REPS);
  return { all, refused };
}

function addRep(line: RepLine, stage: StageOptions['stage']): void {
  const { id: origin, practice, outcomes, samples, ...fields } = line;
  const [outcome = null, ...later] = outcomes;
  const bytes = Buffer.from(encodeRecord(recordOfSamples(samples))).toString('base64');
  stage({ kind: 'rep', origin, practice, rep: { ...fields, outcome }, samples: bytes });
  for (const each of later) stage({ kind: 'outcome', rep: origin, outcome: each });
}

/** A rating or an outcome that is not there yet is added to a rep that is. */
function extendRep(
  line: RepLine,
  known: KeptRep,
  tally: MergeTally,
  stage: StageOptions['stage'],
): void {
  const why = conflictOf(line, known);
  if (why !== null) {
    tally.conflict('rep', line.id, why);
    return;
  }
  const versions = new Set(known.outcomes.map(({ version }) => version));
  const outcomes = line.outcomes.filter(({ version }) => !versions.has(version));
  for (const outcome of outcomes) stage({ kind: 'outcome', rep: line.id, outcome });
  const { selfRating } = line;
  const isRated = selfRating !== null && known.fields.selfRating === null;
  if (isRated) stage({ kind: 'rating', rep: line.id, selfRating });
  tally.count('rep', isRated || outcomes.length > 0 ? 'extended' : 'known');
}

function conflictOf(line: RepLine, known: KeptRep): string | null {
  const { id: _, practice, outcomes, samples, selfRating, ...fields } = line;
  const { selfRating: ratedHere, ...fieldsHere } = known.fields;
  if (
    canonicalJson({ practice, ...fields }) !==
    canonicalJson({ practice: known.practice, ...fieldsHere })
  )
    return DIFFERS;
  if (selfRating !== null && ratedHere !== null && selfRating !== ratedHere)
    return 'the driver rated it otherwise here';
  for (const outcome of outcomes) {
    const other = known.outcomes.find(({ version }) => version === outcome.version);
    if (other !== undefined && canonicalJson(other) !== canonicalJson(outcome))
      return `its score of version ${outcome.version} is another one here`;
  }
  const theirs = samplesJson(recordOfSamples(samples));
  return JSON.stringify(theirs) === JSON.stringify(samplesJson(known.record()))
    ? null
    : 'its samples are others here';
}
