import { countText, fixed, percentText } from '../../number-text.ts';
import { FEWEST_REPS, type LearnedCurve } from './learn-target.ts';
import { corridorWords, type LearnedSource } from './learned-file.ts';

/** From so many reps on a spread is known well enough to be drawn. */
const ENOUGH_REPS = 8;
/** Listed one by one, then counted. */
const MOST_LISTED = 5;

/** What was learned, from what, and what it leaves out, as lines of at most 80 columns where names are short. */
export function learnedLines(curve: LearnedCurve, source: LearnedSource): readonly string[] {
  const { registered, smoothing, corridor } = curve;
  return [
    'landmark             after onset     spread between reps',
    ...registered.landmarks.map(
      ({ name, timeS, spreadS }) =>
        `${name.padEnd(20)} ${`${fixed(timeS, 2)} s`.padStart(11)}     ${name === 'onset' ? '-' : `${fixed(spreadS, 3)} s`}`,
    ),
    ...registered.unused.map(({ name, reason }) => `${name.padEnd(20)} not used: ${reason}`),
    '',
    `spread      ${percentText(curve.spreadLevel, 1)} of full scale once landmarks are laid over each other,`,
    `            ${percentText(curve.overTimeSpreadLevel, 1)} as driven: ${timingWords(curve)}`,
    `smoothing   ${fixed(smoothing.halfHeightHz, 1)} Hz: with it the mean of the others comes closest to each rep`,
    `            (cubic smoothing spline; a rep is missed by ${percentText(smoothing.missLevel, 1)} rms)`,
    `curve       within ${percentText(curve.missLevel, 2)} rms of the registered mean over the release`,
    `corridor    ${corridorWords(corridor.kind)}`,
    ...leftOutLines(source),
    'not told    brake point, speed, gears; a bleed on downforce counts as release',
    ...(source.used.length < ENOUGH_REPS ? [fewRepsLine(source.used.length)] : []),
  ];
}

function timingWords({ spreadLevel, overTimeSpreadLevel }: LearnedCurve): string {
  return overTimeSpreadLevel > spreadLevel
    ? 'what it is more is timing and rate'
    : 'timing and rate hardly differ';
}

function leftOutLines({ kind, leftOut }: LearnedSource): string[] {
  const noun = kind === 'trace' ? 'zone' : 'rep';
  const listed = leftOut
    .slice(0, MOST_LISTED)
    .map(({ number, reason }) => `left out    ${noun} ${number}: ${reason}`);
  const more = leftOut.length - MOST_LISTED;
  return more > 0 ? [...listed, `            and ${more} more`] : listed;
}

function fewRepsLine(used: number): string {
  return `Caution: ${used} reps say little of the spread; with ${ENOUGH_REPS} or more the corridor means something.`;
}

/** Why too few are left, in words. */
export function tooFewWords({
  kind,
  used,
  leftOut,
}: Pick<LearnedSource, 'kind' | 'used' | 'leftOut'>): string {
  const noun = kind === 'trace' ? 'zone' : 'rep';
  const why = leftOut.map(({ number, reason }) => `${noun} ${number}: ${reason}`).join('; ');
  const left = `${countText(used.length, `usable ${noun}`)} of ${used.length + leftOut.length}, and a target is learned from ${FEWEST_REPS} or more`;
  return why === '' ? left : `${left} (${why})`;
}
