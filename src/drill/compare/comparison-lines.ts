import type { MedianShift } from '../../consistency/summary/median-shift.ts';
import { signed, signedTenths, tenths } from '../../number-text.ts';
import type { BrakePhase } from '../diagnosis/brake-phases.ts';
import type { CarryVerdict, Comparison, ForceComparison, PhaseComparison } from './comparison.ts';

/** What carried over and what did not, in words; each part only where there is something to say. */
export function carrySentences({ phases, points }: Comparison): readonly string[] {
  const named = (verdict: CarryVerdict): readonly PhaseComparison[] =>
    phases.filter((phase) => phase.verdict === verdict && phase.difference !== null);
  const [carried, not, open] = [named('carried over'), named('not'), named('open')];
  const nobody = named('not driven');
  const moved = points.flatMap(({ point, difference }) => {
    const words = difference === null ? '' : timeWords(point === 'rise', difference);
    return words === '' ? [] : [`${point} ${Math.abs(difference!.shift).toFixed(2)} s ${words}`];
  });
  return [
    ...(carried.length === 0
      ? []
      : [`Carried over: ${carried.map(({ phase }) => nameOf(phase)).join(', ')}.`]),
    ...(not.length === 0 ? [] : [`Did not carry over: ${not.map(differenceWords).join(', ')}.`]),
    ...(open.length === 0
      ? []
      : [
          `Not clear yet: ${open.map(({ phase }) => nameOf(phase)).join(', ')}; more zones and reps will tell.`,
        ]),
    ...(nobody.length === 0
      ? []
      : [
          `Hardly on the brake on either side: ${nobody.map(({ phase }) => nameOf(phase)).join(', ')}.`,
        ]),
    ...(moved.length === 0 ? [] : [`In the car: ${moved.join(', ')}.`]),
  ];
}

function nameOf(phase: BrakePhase): string {
  return phase === 'hit' ? 'the hit' : phase === 'last 10 %' ? 'the last 10 %' : phase;
}

function differenceWords({ phase, difference }: PhaseComparison): string {
  const { shift } = difference!;
  return `${nameOf(phase)} (${tenths(Math.abs(shift))} % ${shift > 0 ? 'more' : 'less'} brake in the car)`;
}

const VERDICT_WORDS: Readonly<Record<CarryVerdict, string>> = {
  'carried over': 'carried over',
  not: 'did not',
  'not driven': 'not driven',
  open: 'not clear',
};

/** Phases and key points as tables, at most 80 columns. Levels are in % of the rig's full scale. */
export function comparisonTable({ phases, points }: Comparison): readonly string[] {
  const phaseLevel = levelText(phases);
  return [
    row(['phase', `car less rig${phaseLevel}`, 'corridor', 'spread rig/car', '']),
    ...phases.map((phase) =>
      row([
        phase.phase,
        phase.difference === null ? '-' : shiftText(phase.difference, signedTenths, ' %'),
        `${tenths(phase.marginLevel)} %`,
        `${tenthsOrDash(phase.rigSpreadLevel)} / ${tenthsOrDash(phase.carSpreadLevel)} %`,
        phase.difference === null ? '' : VERDICT_WORDS[phase.verdict],
      ]),
    ),
    '',
    row(['key point', `car less rig${levelText(points)}`]),
    ...points.map(({ point, difference }) =>
      row([
        point,
        difference === null ? 'not known' : shiftText(difference, signedSeconds, ' s'),
        difference === null ? '' : timeWords(point === 'rise', difference),
      ]),
    ),
  ];
}

const COLS: readonly number[] = [17, 27, 9, 15];

function row(cells: readonly string[]): string {
  return cells
    .map((cell, i) => `${cell} `.padEnd(COLS[i] ?? 0))
    .join('')
    .trimEnd();
}

/** Few values jump over the level that is asked for: the least of a table is said. */
function levelText(compared: readonly { readonly difference: MedianShift | null }[]): string {
  const levels = compared.flatMap(({ difference }) => difference?.interval.level ?? []);
  return levels.length === 0 ? '' : ` (at ${Math.round(100 * Math.min(...levels))} %)`;
}

function shiftText(
  { shift, interval }: MedianShift,
  text: (value: number) => string,
  unit: string,
): string {
  return `${text(shift)}${unit} (${text(interval.low)} to ${text(interval.high)})`;
}

/** Said only where it is none by chance. */
function timeWords(isRise: boolean, { shift, interval }: MedianShift): string {
  if (interval.low <= 0 && interval.high >= 0) return '';
  if (isRise) return shift > 0 ? 'slower' : 'quicker';
  return shift > 0 ? 'later' : 'earlier';
}

function signedSeconds(seconds: number): string {
  return signed(seconds, 2);
}

function tenthsOrDash(level: number | null): string {
  return level === null ? '-' : tenths(level);
}

/**
 * How the pedal's force was taken out, and what it was.
 *
 * @param levelOne what stands for level 1, with its unit
 * @param given full scale with its unit; null where nobody says it
 */
export function forceSentences(
  { ratio }: ForceComparison,
  levelOne: string,
  given: string | null,
): readonly string[] {
  return [
    `Pedal force taken out: level 1 of the rig is ${levelOne} in the car, so that both plateaus agree.`,
    ratio === null || given === null
      ? 'How hard the car was pressed cannot be compared: nobody says what full scale is there.'
      : `At ${given} for full scale the car was pressed ${ratioWords(ratio)}.`,
  ];
}

function ratioWords({ value, interval }: NonNullable<ForceComparison['ratio']>): string {
  const change = (ratio: number): string => `${signedTenths(ratio - 1)} %`;
  const range = `${change(interval.low)} to ${change(interval.high)} at ${Math.round(100 * interval.level)} %`;
  if (interval.low <= 1 && interval.high >= 1) return `about as hard: ${change(value)} (${range})`;
  return `${value > 1 ? 'harder' : 'more lightly'}: ${change(value)} (${range})`;
}
