import { percentText, signed, signedTenths, tenths } from '../../number-text.ts';
import type { LiveMeasures } from '../../score/live-measures.ts';
import type { RepScore } from '../../score/rep-score.ts';
import { signedDistanceText, type TextUnits } from '../../unit-text.ts';
import { kmhFromMetresPerSecond, mphFromMetresPerSecond } from '../../units.ts';
import type { ReviewedRep } from './practice-review.ts';

/** The short table of a block's reps: one row each. */
export const REP_HEADINGS: readonly string[] = ['rep', 'help', 'score', 'error %', 'in words'];

export function repRow({
  number,
  feedback,
  outcome,
  voided,
  words,
  call,
}: ReviewedRep): readonly string[] {
  const said = [call === null ? '' : `call: ${call}`, voided ?? words].filter((one) => one !== '');
  return [
    String(number),
    feedback,
    outcome === null ? '-' : String(Math.round(outcome.score)),
    outcome?.kind === 'scored' ? tenths(outcome.releaseErrorLevel) : '-',
    said.join('; '),
  ];
}

/** What picked reps are compared by; `-` where it is not known. */
interface ComparedNumber {
  readonly name: string;
  readonly text: (rep: ReviewedRep, units: TextUnits) => string;
}

const ALL: readonly ComparedNumber[] = [
  { name: 'help', text: ({ feedback }) => feedback },
  {
    name: 'score',
    text: ({ outcome }) => (outcome === null ? '-' : String(Math.round(outcome.score))),
  },
  scored('release', ({ parts }) => percentText(parts.release)),
  scored('hit', ({ parts }) => percentText(parts.hit)),
  scored('smooth', ({ parts }) => percentText(parts.smooth)),
  scored('release error, rms', ({ releaseErrorLevel }) => `${tenths(releaseErrorLevel)} %`),
  scored('average error', ({ averageErrorLevel }) => `${signedTenths(averageErrorLevel)} %`),
  scored('peak', ({ peakError }) => `${signedTenths(peakError)} %`),
  scored('start of release', ({ keyPointErrorsS }) => lateness(keyPointErrorsS.startOfRelease)),
  scored('half of the release', ({ keyPointErrorsS }) => lateness(keyPointErrorsS.halfRelease)),
  scored('final release', ({ keyPointErrorsS }) => lateness(keyPointErrorsS.finalRelease)),
  scored('brake off', ({ keyPointErrorsS }) => lateness(keyPointErrorsS.brakeOff)),
  live('brake point', ({ brakePointErrorM }, units) => signedDistanceText(brakePointErrorM, units)),
  live('slowest speed', (measures, units) => speedText(measures.slowestSpeedErrorMps, units)),
  live('turn-in', ({ turnInErrorM }, units) =>
    turnInErrorM === null ? '-' : signedDistanceText(turnInErrorM, units),
  ),
  scored('re-applied', ({ reapplications }) => String(reapplications)),
  { name: 'felt', text: ({ selfRating }) => selfRating ?? '-' },
  { name: 'in words', text: ({ words, voided }) => voided ?? (words === '' ? '-' : words) },
];

/** Those that are known of one of the reps at least. */
export function comparedNumbers(
  reps: readonly ReviewedRep[],
  units: TextUnits,
): readonly ComparedNumber[] {
  return ALL.filter(({ text }) => reps.some((rep) => text(rep, units) !== '-'));
}

/** Only of the live car; a score from before there was one does not know of it. */
function live(
  name: string,
  of: (measures: LiveMeasures, units: TextUnits) => string,
): ComparedNumber {
  return {
    name,
    text: ({ outcome }, units) =>
      outcome?.kind === 'scored' && outcome.live != null ? of(outcome.live, units) : '-',
  };
}

function speedText(speedMps: number, units: TextUnits): string {
  return units === 'imperial'
    ? `${signed(mphFromMetresPerSecond(speedMps), 1)} mph`
    : `${signed(kmhFromMetresPerSecond(speedMps), 1)} km/h`;
}

function scored(name: string, of: (score: RepScore) => string): ComparedNumber {
  return { name, text: ({ outcome }) => (outcome?.kind === 'scored' ? of(outcome) : '-') };
}

function lateness(errorS: number | null): string {
  if (errorS === null) return 'not reached';
  const ms = 10 * Math.round(100 * Math.abs(errorS));
  return ms === 0 ? 'on time' : `${ms} ms ${errorS > 0 ? 'late' : 'early'}`;
}
