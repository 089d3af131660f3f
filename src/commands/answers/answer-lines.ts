import { wrapText } from '../../screens/write-text.ts';
import { ANSWERING } from './answers.ts';

const COLS = 78;
/** Keeps the two words of a name on one line. */
const UNBROKEN = '~';

/** What `--json` promises, as lines of help. */
export function answerLines(): readonly string[] {
  const names = ANSWERING.map((name) => name.replace(' ', UNBROKEN)).join(', ');
  return [
    'One object on stdout, one line; diagnostics go to stderr. Names are in',
    'snake_case; those of numbers end in their unit or say what is counted:',
    '`time_s`, `distance_m`, `pressure_bar`, `speed_mps`, `force_n`, `reps_count`;',
    '`level` is 0 to 1. What is not known is null, never 0 and never missing. A',
    'field keeps its meaning; new ones may be added.',
    '',
    '`ebbline help json COMMAND` prints the JSON Schema (draft 2020-12) of an answer:',
    'each field with its meaning, its unit and whether it may be null. It is that of',
    'this version of the program, so that it knows all fields there are. Of:',
    ...wrapText(names, COLS).map((line) => `  ${line.replaceAll(UNBROKEN, ' ')}`),
    '',
    'exit code 0   done',
    '          1   failed: what, where and what to do stand on stderr',
    '          2   wrong usage',
    '         70   a defect of the program',
    '        129, 130, 143   ended by SIGHUP, SIGINT, SIGTERM',
  ];
}
