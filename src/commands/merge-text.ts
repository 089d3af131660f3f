import { fileOfEntry, type Manifest } from '../history/archive/archive-format.ts';
import type { MergeCounts, MergedKind, MergeReport } from '../history/archive/merge-report.ts';
import { cleanText } from '../input/discovery/clean-text.ts';
import { countedText } from './counted-text.ts';
import { namesText } from './names-text.ts';

/** An archive that was taken in, or would be. */
interface Merged {
  readonly path: string;
  readonly manifest: Manifest;
  readonly isDry: boolean;
  readonly report: MergeReport;
}

const MOST_LISTED = 20;

export function mergeText({ path, manifest, isDry, report }: Merged): string {
  const { counts, conflicts } = report;
  const [added, extended, known] = [
    sums(counts, 'added'),
    sums(counts, 'extended'),
    sums(counts, 'known'),
  ];
  const drivers = namesText(manifest.drivers);
  const isNew = [...Object.values(added), ...Object.values(extended)].some((count) => count > 0);
  const would = isDry ? 'Would take in' : 'Took in';
  const conflicting = countedText(sums(counts, 'conflicting'));
  const lines = [
    `${path}: ${drivers === '' ? 'no driver' : drivers}, exported ${instantText(manifest.exportedAt)}.`,
    isNew ? `${would} ${countedText(added)}.` : 'Nothing in it is new here.',
    ...(extended.reps > 0
      ? [`${isDry ? 'Would add' : 'Added'} ratings or scores to ${countedText(extended)}.`]
      : []),
    ...(Object.values(known).some((count) => count > 0)
      ? [`Here already: ${countedText(known)}.`]
      : []),
    ...(conflicts.length > 0
      ? [
          `In conflict: ${conflicting}. What is here stays as it is:`,
          ...conflicts
            .slice(0, MOST_LISTED)
            .map(({ kind, id, why }) => `  ${kind} ${cleanText(id, 80)}: ${why}`),
          ...(conflicts.length > MOST_LISTED ? ['  and more; --json lists them'] : []),
        ]
      : []),
    ...(isDry ? ['Nothing was written.'] : []),
  ];
  return `${lines.join('\n')}\n`;
}

/** `2026-11-27 21:14 UTC`; what another program wrote in another form as it is. */
function instantText(instant: string): string {
  return cleanText(instant).replace(/^([\d-]{10})T(\d\d:\d\d):[\d.]+Z$/, '$1 $2 UTC');
}

export function mergeJson({ path, manifest, isDry, report }: Merged): object {
  const { counts, conflicts } = report;
  return {
    file: path,
    exported_at: manifest.exportedAt,
    program_version: manifest.programVersion,
    drivers: manifest.drivers,
    dry_run: isDry,
    practices: countsJson(counts.practice),
    reps: countsJson(counts.rep),
    notes: countsJson(counts.note),
    files: countsJson(counts.file),
    conflicts: conflicts.map(({ kind, id, why }) => ({
      kind,
      id: kind === 'file' ? nameOf(id) : id,
      why,
    })),
  };
}

function nameOf(entry: string): string {
  const file = fileOfEntry(entry);
  return file === null ? entry : `${file.folder}/${file.name}`;
}

function countsJson({ added, extended, known, conflicting }: MergeCounts): object {
  return {
    added_count: added,
    extended_count: extended,
    known_count: known,
    conflicting_count: conflicting,
  };
}

function sums(
  counts: Readonly<Record<MergedKind, MergeCounts>>,
  what: keyof MergeCounts,
): Record<'practices' | 'reps' | 'notes' | 'files', number> {
  return {
    practices: counts.practice[what],
    reps: counts.rep[what],
    notes: counts.note[what],
    files: counts.file[what],
  };
}
