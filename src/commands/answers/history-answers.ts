import {
  flag,
  list,
  numbersOrNull,
  object,
  oneOfWords,
  orNull,
  tally,
  text,
  texts,
  wholes,
  wholesOrNull,
} from './answer-parts.ts';
import type { AnswerSchema } from './answer-schema.ts';

/** `note add --json`. */
export const NOTE_ADD_ANSWER: AnswerSchema = object(
  'A note that is kept',
  wholes({ id: 'of the note' }),
);

/** `note list --json`. */
export const NOTE_LIST_ANSWER: AnswerSchema = object('Notes and marks', {
  notes: list(
    'in their order',
    object('One note', {
      ...wholes({ id: 'of the note' }),
      at: text('instant in UTC (RFC 3339)'),
      local_date: text('local date'),
      driver: text('whose note'),
      text: text('what it says; empty for a mark that waits for words'),
      car: orNull(text('car it is about')),
      corner: orNull(text('corner it is about')),
      variant: orNull(text('variant of the corner')),
      ...wholesOrNull({
        gear: 'it is about',
        rep_id: 'of the rep it is about',
        rep_number: 'number of that rep in its practice',
      }),
    }),
  ),
});

/** `export --json`; a spreadsheet knows only its reps. */
export const EXPORT_ANSWER: AnswerSchema = object('A file that was written', {
  file: text('path of it'),
  ...wholesOrNull({ format: 'format of the archive' }),
  exported_at: orNull(text('instant in UTC (RFC 3339)')),
  drivers: orNull(texts('whose reps are in it')),
  ...wholesOrNull({ practice_count: 'practices' }),
  ...wholes({ rep_count: 'reps' }),
  ...wholesOrNull({ note_count: 'notes', file_count: 'files' }),
});

const counts = (what: string): AnswerSchema =>
  object(
    what,
    wholes({
      added_count: 'new here',
      extended_count: 'here already, with ratings or scores added',
      known_count: 'here already',
      conflicting_count: 'here already and different: left as they are',
    }),
  );

/** `import --json`. */
export const IMPORT_ANSWER: AnswerSchema = object('An archive that was taken in', {
  file: text('path of the archive'),
  exported_at: text('when it was written (RFC 3339)'),
  program_version: text('version of the program that wrote it'),
  drivers: texts('whose reps are in it'),
  dry_run: flag('nothing was written'),
  practices: counts('Practices'),
  reps: counts('Reps'),
  notes: counts('Notes'),
  files: counts('Files'),
  conflicts: list(
    'what is different here',
    object('One conflict', {
      kind: oneOfWords('of what', 'practice', 'rep', 'note', 'file'),
      id: text('origin, or the name of the file'),
      why: text('in what it differs'),
    }),
  ),
});

/** `rescore --json`. */
export const RESCORE_ANSWER: AnswerSchema = object('New scores beside the stored ones', {
  ...wholes({
    score_version: 'version of the new scores',
    rescored_count: 'reps that were scored',
    had_version_count: 'reps that had that version',
    void_count: 'void reps',
  }),
  ...numbersOrNull({ median_change_points: 'new score less the newest before, median' }),
  interrupted: flag('ended before all were done'),
  not_rescorable: list(
    'reps that cannot be scored',
    object('One reason', {
      reason: text('why'),
      reps: list('identities of the reps', { type: 'integer' }),
    }),
  ),
});

/** `virtual history --json`. */
export const VIRTUAL_HISTORY_ANSWER: AnswerSchema = object('An invented history', {
  ...wholes({ practices: 'written', reps: 'written' }),
  reps_of: tally('reps by what was driven'),
  first_day: orNull(text('local date of the first practice')),
  last_day: orNull(text('local date of the last practice')),
  ...wholesOrNull({
    missed_week: 'number, from 1, of the week without practice',
    pedal_change_week: 'number, from 1, of the week of the new pedals',
  }),
  interrupted: flag('ended before all was written'),
});
