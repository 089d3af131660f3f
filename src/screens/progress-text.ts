import type { Estimate } from '../consistency/estimate.ts';
import type { PracticeDay } from '../consistency/practice-day.ts';
import { progressSentence } from '../consistency/progress-sentence.ts';
import type { Conditions } from '../consistency/rep-measure.ts';
import type { TargetProgress } from '../consistency/target-progress.ts';
import { cleanText } from '../input/discovery/clean-text.ts';
import { countText, tidy } from './number-text.ts';

const COLUMNS = 80;

interface Column {
  readonly head: readonly [string, string, string];
  readonly width: number;
  cell(day: PracticeDay): string;
}

const TABLE: readonly Column[] = [
  { head: ['', '', 'day'], width: -10, cell: ({ day }) => day },
  { head: ['', '', 'reps'], width: 4, cell: ({ reps }) => String(reps) },
  {
    head: ['', 'shown/', 'hidden'],
    width: 6,
    cell: ({ shown, hidden }) => `${shown}/${hidden}`,
  },
  {
    head: ['median', 'score', '0..100'],
    width: 6,
    cell: ({ medianScore }) => known(medianScore, (score) => tidy(score, 0)),
  },
  {
    head: ['median', 'release', 'error %'],
    width: 7,
    cell: ({ medianReleaseErrorLevel }) => known(medianReleaseErrorLevel, percent),
  },
  {
    head: ['', 'average', 'error %'],
    width: 7,
    cell: ({ averageErrorLevel }) => known(averageErrorLevel, signedPercent),
  },
  {
    head: ['spread', 'of it', '%'],
    width: 7,
    cell: ({ amountSpreadLevel }) => known(amountSpreadLevel, percent),
  },
  {
    head: ['spread', 'timing', 'ms'],
    width: 7,
    cell: ({ timingSpreadS }) => known(timingSpreadS, (s) => tidy(1000 * s, 0)),
  },
  { head: ['', '', 'of n'], width: 4, cell: ({ measured }) => String(measured) },
  {
    head: ['', 're-ap-', 'plied'],
    width: 6,
    cell: ({ reapplicationsPerRep: times }) => (times === null ? '-' : tidy(times, 1)),
  },
  { head: ['', 'abor-', 'ted'], width: 5, cell: ({ aborted }) => String(aborted) },
];

const WORDS: Readonly<Record<keyof Conditions, string>> = {
  targetVersion: 'target version',
  scoreVersion: 'score version',
  source: 'source',
  sensor: 'sensor',
  calibrationId: 'calibration',
  foot: 'foot',
  footwear: 'footwear',
};

/** The progress of drivers on targets as lines of at most 80 columns: words first, then a table by practice day. */
export function progressText(all: readonly TargetProgress[]): string {
  const tables = all.flatMap((progress) => [...tableOf(progress), '']);
  return `${[...tables, ...legend(all)].join('\n')}\n`;
}

function tableOf(progress: TargetProgress): string[] {
  const rows = progress.days.flatMap((day, i) => [
    ...(day.changed.length > 0 ? [breakLine(progress.days[i - 1]!, day)] : []),
    line(TABLE.map((column) => pad(column.cell(day), column.width))),
  ]);
  const head = [0, 1, 2].map((row) => line(TABLE.map((c) => pad(c.head[row]!, c.width))));
  return [title(progress), progressSentence(progress), '', ...head, ...rows];
}

function title({ driver, targetId, days }: TargetProgress): string {
  const reps = days.reduce((sum, day) => sum + day.reps, 0);
  const dates = new Set(days.map(({ day }) => day)).size;
  const counts = `${countText(reps, 'rep')} on ${countText(dates, 'day')}`;
  return `${cleanText(targetId, 30)}, ${cleanText(driver, 24)}: ${counts}`;
}

/** Stands between two rows that do not compare, and says why. */
function breakLine(before: PracticeDay, after: PracticeDay): string {
  const changes = after.changed.map((name) => {
    const [was, is] = [before, after].map(({ conditions }) =>
      cleanText(String(conditions[name]), 12),
    );
    return `${WORDS[name]} ${was} -> ${is}`;
  });
  const text = `-- does not compare: ${changes.join(', ')} `;
  const letters = Array.from(text);
  return letters.length > COLUMNS
    ? `${letters.slice(0, COLUMNS - 3).join('')}...`
    : text.padEnd(COLUMNS, '-');
}

function legend(all: readonly TargetProgress[]): string[] {
  const days = all.flatMap((progress) => progress.days);
  const warmUp = days.some((day) => day.warmUp > 0);
  const lost = days.reduce((sum, day) => sum + day.deviceLost, 0);
  return [
    'Scores compare only within one target version. Nothing is averaged across a line',
    'that says what changed. % is of full scale, + is heavy. Medians and averages are',
    'given from 8 reps on, the spread (standard deviation from rep to rep) from 10:',
    '"5 of 8" is what there is. Timing is that of the start of release. First-of-day',
    'reps count as hidden. Whether anything got better is not said here.',
    ...(warmUp ? ['Warm-up reps are counted, but are in no median, average or spread.'] : []),
    ...(lost > 0 ? [`Left out because a device was lost: ${countText(lost, 'rep')}.`] : []),
  ];
}

function known({ value, reps, needed }: Estimate, text: (value: number) => string): string {
  return value === null ? `${reps} of ${needed}` : text(value);
}

function percent(level: number): string {
  return tidy(100 * level, 1);
}

function signedPercent(level: number): string {
  const text = percent(level);
  return Number(text) > 0 ? `+${text}` : text;
}

/** A negative width is for words, which stand on the left. */
function pad(text: string, width: number): string {
  return width < 0 ? text.padEnd(-width) : text.padStart(width);
}

function line(cells: readonly string[]): string {
  return cells.join(' ').trimEnd();
}
