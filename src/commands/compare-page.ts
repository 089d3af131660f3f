import type { UncomparedRep } from '../drill/compare/compared-rep.ts';
import type { Comparison } from '../drill/compare/comparison.ts';
import {
  carrySentences,
  comparisonTable,
  forceSentences,
} from '../drill/compare/comparison-lines.ts';
import { wrapText } from '../screens/write-text.ts';
import type { LoggedZone } from '../trace/log/logged-zone.ts';
import type { ImportedTrace } from '../trace/log/zone-lines.ts';
import type { RigSide } from './compare-reps.ts';
import { notCompared } from './not-compared.ts';
import { brakeText } from './trace-full-scale.ts';

const COLS = 80;

/** What was compared, and what came of it. */
export interface Compared {
  readonly trace: ImportedTrace;
  readonly zones: readonly LoggedZone[];
  readonly side: RigSide;
  readonly found: Comparison;
  /** No zones were named. */
  readonly isWhole: boolean;
}

/**
 * What carried over to the car, for 80 columns.
 *
 * @param fullScale what level 1 stands for in the car, in the brake's unit of the log; null where nobody says it
 */
export function comparePage(
  { trace, zones, side, found, isWhole }: Compared,
  fullScale: number | null,
): string {
  const { brake } = trace.summary;
  const text = (value: number): string => brakeText(brake, value);
  const given = fullScale === null ? null : text(fullScale);
  const sentences = [
    ...forceSentences(found.force, text(found.force.levelOneInCar), given),
    ...leftOut('zone', found.uncomparedCar),
    ...leftOut('rep', found.uncomparedRig),
    ...side.cautions.map((caution) => `Caution: ${caution}`),
    ...(isWhole
      ? [
          `Caution: all ${zones.length} zones of the log are taken for one corner; name them with --zone.`,
        ]
      : []),
    'Carried over: the whole interval is inside the corridor. Did not: it is no chance and more than the corridor.',
  ];
  const lines = [
    `${trace.name} against the rig: ${side.target.name}`,
    ...wrapText(`${found.car.length} logged zones, ${found.rig.length} ${side.words}`, COLS),
    '',
    ...carrySentences(found).flatMap((sentence) => wrapText(sentence, COLS)),
    '',
    ...comparisonTable(found),
    '',
    ...sentences.flatMap((sentence) => wrapText(sentence, COLS)),
    'Not compared:',
    ...notCompared(trace, zones, side, found).flatMap((what) =>
      wrapText(what, COLS - 2).map((line, i) => (i === 0 ? `- ${line}` : `  ${line}`)),
    ),
  ];
  return lines.map((line) => `${line}\n`).join('');
}

const MOST_LISTED = 4;

/** Those that could not be compared, with their reasons; empty where there are none. */
export function leftOut(noun: string, reps: readonly UncomparedRep[]): string[] {
  if (reps.length === 0) return [];
  const listed = reps
    .slice(0, MOST_LISTED)
    .map(({ number, reason }) => `${noun} ${number}: ${reason}`)
    .join('; ');
  const more = reps.length - MOST_LISTED;
  return [`Left out: ${listed}${more > 0 ? ` and ${more} more` : ''}.`];
}
