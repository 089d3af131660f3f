import * as json from './answer-parts.ts';
import type { AnswerSchema } from './answer-schema.ts';

/** `note add --json`. */
export const NOTE_ADD_ANSWER: AnswerSchema = json.object(
  'A note that is kept',
  json.wholes({ id: 'of the note' }),
);

/** `note list --json`. */
export const NOTE_LIST_ANSWER: AnswerSchema = json.object('Notes and marks', {
  notes: json.list(
    'in their order',
    json.object('One note', {
      ...json.wholes({ id: 'of the note' }),
      at: json.text('instant in UTC (RFC 3339)'),
      local_date: json.text('local date'),
      driver: json.text('whose note'),
      text: json.text('what it says; empty for a mark that waits for words'),
      car: json.orNull(json.text('car it is about')),
      corner: json.orNull(json.text('corner it is about')),
      variant: json.orNull(json.text('variant of the corner')),
      ...json.wholesOrNull({
        gear: 'it is about',
        rep_id: 'of the rep it is about',
        rep_number: 'number of that rep in its practice',
      }),
    }),
  ),
});

/** `export --json`; a spreadsheet knows only its reps. */
export const EXPORT_ANSWER: AnswerSchema = json.object('A file that was written', {
  file: json.text('path of it'),
  ...json.wholesOrNull({ format: 'format of the archive' }),
  exported_at: json.orNull(json.text('instant in UTC (RFC 3339)')),
  drivers: json.orNull(json.texts('whose reps are in it')),
  ...json.wholesOrNull({ practice_count: 'practices' }),
  ...json.wholes({ rep_count: 'reps' }),
  ...json.wholesOrNull({ note_count: 'notes', file_count: 'files' }),
});

/** `backup --json`. */
export const BACKUP_ANSWER: AnswerSchema = json.object('A copy of the whole history', {
  file: json.text('path of the copy'),
  history: json.text('what was copied: its file, and what reads it'),
});

const counts = (what: string): AnswerSchema =>
  json.object(
    what,
    json.wholes({
      added_count: 'new here',
      extended_count: 'here already, with ratings or scores added',
      known_count: 'here already',
      conflicting_count: 'here already and different: left as they are',
    }),
  );

/** `import --json`. */
export const IMPORT_ANSWER: AnswerSchema = json.object('An archive that was taken in', {
  file: json.text('path of the archive'),
  exported_at: json.text('when it was written (RFC 3339)'),
  program_version: json.text('version of the program that wrote it'),
  drivers: json.texts('whose reps are in it'),
  dry_run: json.flag('nothing was written'),
  practices: counts('Practices'),
  reps: counts('Reps'),
  notes: counts('Notes'),
  files: counts('Files'),
  conflicts: json.list(
    'what is different here',
    json.object('One conflict', {
      kind: json.oneOfWords('of what', 'practice', 'rep', 'note', 'file'),
      id: json.text('origin, or the name of the file'),
      why: json.text('in what it differs'),
    }),
  ),
});

/** `rescore --json`. */
export const RESCORE_ANSWER: AnswerSchema = json.object('New scores beside the stored ones', {
  ...json.wholes({
    score_version: 'version of the new scores',
    rescored_count: 'reps that were scored',
    had_version_count: 'reps that had that version',
    void_count: 'void reps',
  }),
  ...json.numbersOrNull({ median_change_points: 'new score less the newest before, median' }),
  interrupted: json.flag('ended before all were done'),
  not_rescorable: json.list(
    'reps that cannot be scored',
    json.object('One reason', {
      reason: json.text('why'),
      reps: json.list('identities of the reps', { type: 'integer' }),
    }),
  ),
});

/** `virtual history --json`. */
export const VIRTUAL_HISTORY_ANSWER: AnswerSchema = json.object('An invented history', {
  ...json.wholes({ practices: 'written', reps: 'written' }),
  reps_of: json.tally('reps by what was driven'),
  first_day: json.orNull(json.text('local date of the first practice')),
  last_day: json.orNull(json.text('local date of the last practice')),
  ...json.wholesOrNull({
    missed_week: 'number, from 1, of the week without practice',
    pedal_change_week: 'number, from 1, of the week of the new pedals',
  }),
  interrupted: json.flag('ended before all was written'),
});
