import {
  QUANTA_PER_BRAKE_LEVEL,
  QUANTA_PER_DEGREE,
  QUANTA_PER_LEVEL,
  TICKS_PER_S,
} from '../../trace/quanta.ts';
import { ARCHIVE_FORMAT } from './archive-format.ts';

/** What an archive says of itself to whoever opens it without the program. */
export function archiveReadme(): string {
  return `ebbline archive, format ${ARCHIVE_FORMAT}

A driver's brake-release practice: all that was recorded, the scores, the notes and the files they refer to.
\`ebbline import FILE.zip\` takes it in; any program that reads ZIP and JSON can read it.

manifest.json     format, program version, date, drivers, counts; size in bytes and SHA-256 of every other entry
practices.jsonl   one practice a line
reps.jsonl        one rep a line, with its samples and its outcomes of all score versions
notes.jsonl       one note a line
reps.csv          one rep a row, by its newest score, for a spreadsheet; not read by the import
samples/*.csv     only where asked for: the samples of a rep, for a spreadsheet; not read by the import
profiles/*/       targets, cars, corner sheets, plans and events as people wrote them (YAML)
bundled/*/        those that came with the program and that reps refer to

JSON lines: UTF-8, one object a line, ended by a line feed, keys in alphabetical order ("samples" last). The order is
that of the instants, then of the ids. Field names end in their unit. Levels are 0..1 of the driver's full scale. null
says that something is not there. Instants: utcMs is milliseconds since 1970-01-01 UTC; zone is the IANA zone in which
it was recorded, offsetMin its offset then, east positive.

"id" stays the same in every copy of a history: what has the same id is the same practice, rep or note. reps name
their practice by its id, notes their rep (or null).

practices.jsonl   id, driver, startedAt, source (hid, virtual, pointer, replay), foot, footwear, calibrationId (hash of
                  devices and calibration), sensor (force, pressure, travel, unknown), seed
reps.jsonl        id, practice, at, number and block (from 1), phase, order, feedback (shown, hidden, first-of-day),
                  targetId, targetVersion, targetChange (how the target differed from its file's), car, corner,
                  variant, condition, live (what a zone of the live car began with), selfRating, voided, outcomes,
                  samples
notes.jsonl       id, rep, at, driver, text (empty for a mark), car, corner, variant, gear

outcomes          oldest score version first; kind "scored" or "no-rep"; score 0..100; errors are rep minus target:
                  positive is late, heavy or far
samples           brake, throttle, clutch, steering: null where the rig has none, else two lists of whole numbers:
                    stepTicks  time of each sample in ${1 / TICKS_PER_S} s: the first from the cue, each other from the one before
                    quanta     value of each sample: brake in 1/${QUANTA_PER_BRAKE_LEVEL} of full scale, throttle and clutch in
                               1/${QUANTA_PER_LEVEL}, steering in 1/${QUANTA_PER_DEGREE} degree, left positive
                  buttons (atTicks, control, pressed, action), gaps in the reports (fromTicks, toTicks),
                  brakeStepLevel (one count of the sensor), endTicks (end of the recording)
                  These are exact: the program keeps samples on this grid, and scores what it keeps.

CSV: RFC 4180 (comma, CR LF, double quotes), decimal point. reps.csv begins with a byte order mark, so that a
spreadsheet takes it for UTF-8; samples/*.csv have none. In texts an apostrophe stands before = + - @ tab and line
ends wherever a spreadsheet could take them for a formula. The texts as they were stand in the JSON lines.

A training aid, not driving instruction: its models are simpler than any car.
`;
}
