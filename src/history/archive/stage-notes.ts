import type { HistorySnapshot } from '../kept.ts';
import { NOTES } from './archive-format.ts';
import { archiveLines } from './archive-lines.ts';
import { canonicalJson } from './canonical-json.ts';
import { damagedArchive } from './damaged-archive.ts';
import { type NoteLine, noteShape } from './line-formats.ts';
import { DIFFERS, type MergeTally } from './merge-report.ts';
import type { Archive } from './open-archive.ts';
import type { StageOptions } from './stage-options.ts';
import { expectCount, quotedId, type StagedIds, takeId } from './staged-ids.ts';

/** Stages the notes that are not here yet. */
export async function stageNotes(
  archive: Archive,
  here: HistorySnapshot,
  tally: MergeTally,
  { driver, reps, stage }: StageOptions & { readonly reps: StagedIds },
): Promise<void> {
  const all = new Set<string>();
  for await (const line of archiveLines<NoteLine>(archive, NOTES, noteShape)) {
    takeId(all, line.id, archive, NOTES);
    const { id, rep, ...said } = line;
    const note = { ...said, driver: driver ?? said.driver };
    if (rep !== null && !reps.all.has(rep))
      throw damagedArchive(`the rep of note ${quotedId(id)} is missing`, archive.path);
    const known = here.note(id);
    if (known !== null) {
      const isSame =
        canonicalJson({ rep, note }) === canonicalJson({ rep: known.rep, note: known.note });
      if (isSame) tally.count('note', 'known');
      else tally.conflict('note', id, DIFFERS);
    } else if (rep !== null && reps.refused.has(rep))
      tally.conflict('note', id, 'its rep was not taken in');
    else {
      stage({ kind: 'note', origin: id, rep, note });
      tally.count('note', 'added');
    }
  }
  expectCount(all, archive.manifest.counts.notes, archive, NOTES);
}
