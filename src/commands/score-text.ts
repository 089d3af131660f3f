import { fixed, percentText, signed, signedTenths } from '../number-text.ts';
import { describeOutcome } from '../score/describe-outcome.ts';
import type { RepOutcome, RepScore, ScoreFlag } from '../score/rep-score.ts';
import { asciiFallback } from '../screens/ascii-fallback.ts';
import { BIG_ROWS, bigNumber, bigNumberWidth } from '../screens/big-number.ts';
import { createGrid } from '../screens/cell-grid.ts';
import { toText } from '../screens/grid-text.ts';
import { MONOCHROME_THEME } from '../screens/theme.ts';
import type { Target } from '../target/target.ts';

const FLAGS: Readonly<Record<ScoreFlag, string>> = {
  gap: 'samples are missing: rates and smoothness are left out',
  clipped: 'the sensor was at its limit for more than 50 ms',
  'short-baseline': 'less than 150 ms before the brake: the onset is uncertain',
  double: 'the brake was pressed twice: the first press is scored',
  'not-released': 'the pressure never fell below a tenth of the plateau',
};

/** A rep's outcome as plain text: one big number, one sentence, one small table. */
export function scoreText(outcome: RepOutcome, target: Target, utf8: boolean): string {
  const sentence = describeOutcome(outcome);
  const lines = [
    ...bigLines(fixed(outcome.score, 0), utf8),
    '',
    sentence === '' ? 'in band' : sentence,
    '',
    ...(outcome.kind === 'scored' ? table(outcome) : []),
    ...outcome.flags.map((flag) => `note: ${FLAGS[flag]}`),
    `target ${target.name}`,
    `score ${outcome.version}, provisional: its limits have not seen enough real pedals`,
  ];
  return `${lines.join('\n')}\n`;
}

function bigLines(score: string, utf8: boolean): string[] {
  const grid = createGrid({ cols: bigNumberWidth(score), rows: BIG_ROWS });
  bigNumber(grid, 0, 0, score, MONOCHROME_THEME.strong);
  if (!utf8) asciiFallback(grid);
  return toText(grid).split('\n');
}

function table({ parts, pointsLost, ...rep }: RepScore): string[] {
  const rows = [
    ['', 'of 100', 'lost', ''],
    ['release', hundred(parts.release), lost(pointsLost.release), releaseText(rep)],
    ['hit', hundred(parts.hit), lost(pointsLost.hit), hitText(rep)],
    ['smooth', hundred(parts.smooth), lost(pointsLost.smooth), smoothText(rep)],
  ] as const;
  const lines = rows.map(([name, share, points, text]) =>
    `${name.padEnd(8)}${share.padStart(7)}${points.padStart(7)}  ${text}`.trimEnd(),
  );
  return [...lines, ''];
}

const hundred = (share: number): string => fixed(100 * share, 0);
const lost = (points: number): string => fixed(points, 1);

type Errors = Omit<RepScore, 'parts' | 'pointsLost'>;

function releaseText(rep: Errors): string {
  const { releaseErrorLevel, averageErrorLevel, inCorridor, keyPointErrorsS } = rep;
  const start = keyPointErrorsS.startOfRelease;
  return [
    `error ${percentText(releaseErrorLevel, 1)} of full scale`,
    `average ${signedTenths(averageErrorLevel)} %`,
    `in corridor ${fixed(100 * inCorridor, 0)} %`,
    start === null ? 'never released' : `start ${signedMs(start)}`,
  ].join(', ');
}

function hitText({ peakError, riseErrorS }: Errors): string {
  return `peak ${signedTenths(peakError)} % of the target's, rise ${signedMs(riseErrorS)}`;
}

function smoothText({ reapplications, rateRatio }: Errors): string {
  const rate = rateRatio === null ? '' : `, steepest ${fixed(rateRatio, 2)} times the target's`;
  return `re-applications ${reapplications}${rate}`;
}

function signedMs(seconds: number): string {
  return `${signed(1000 * seconds, 0)} ms`;
}
