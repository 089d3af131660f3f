import type { Car } from '../car/car.ts';
import { CLOSE_LBF, FAIR_LBF, type FeelPair, type PedalMatch } from '../car/pedal-match.ts';
import { wrapText } from '../screens/write-text.ts';
import { speedText, type TextUnits } from '../unit-text.ts';
import { kmhFromMetresPerSecond, lbfFromNewtons, newtonsFromLbf } from '../units.ts';

const COLS = 80;

/** A match as a page of text. Forces stand in newtons and pounds, because pedals are sold in both. */
export function matchText(car: Car, match: PedalMatch, units: TextUnits): string {
  const { carPeakN, rigPeakN, speedMps } = match;
  const lines = [
    `${car.name}: pedal force at the limit from ${speedText(speedMps, units)}`,
    `  car  ${bothUnits(carPeakN)}`,
    `  rig  ${rigPeakN === null ? 'not known' : bothUnits(rigPeakN)}`,
    ...feelLine('travel', match.travelM, 1e3, 'mm'),
    ...feelLine('dead stroke', match.deadStrokeM, 1e3, 'mm'),
    ...feelLine('stiffness', match.stiffnessNpm, 1e-3, 'N/mm'),
    '',
    ...wrapText(`${verdictText(match)} ${RULE}`, COLS),
    ...longPedal(match),
    '',
    'What this rig cannot teach:',
    ...match.cannotTeach.flatMap((text) =>
      wrapText(text, COLS - 4).map((line, i) => `${i === 0 ? '  - ' : '    '}${line}`),
    ),
  ];
  return lines.map((line) => `${line}\n`).join('');
}

const RULE = `Common practice, without a source, calls a pedal good when its peak is within ${CLOSE_LBF} to ${FAIR_LBF} lbf (${newtonsFromLbf(CLOSE_LBF).toFixed(0)} to ${newtonsFromLbf(FAIR_LBF).toFixed(0)} N) of the car's.`;

/** The drill for a foot that has to leave its own pedal. */
const LONG_PEDAL_COMMAND = 'ebbline drill --plan long-pedal';

function longPedal({ movesOtherwise, travelM, stiffnessNpm }: PedalMatch): string[] {
  if (movesOtherwise.length > 0) {
    const why = `${movesOtherwise.join(', ')}. A foot that knows places and not loads will miss it.`;
    return [
      '',
      ...wrapText(`On the other pedal: ${why} For that:`, COLS),
      `  ${LONG_PEDAL_COMMAND}`,
    ];
  }
  if (travelM.rig !== null || stiffnessNpm.rig !== null) return [];
  const ask =
    'How far and how stiffly this pedal moves is not known. Measure it once: --travel-mm, --dead-stroke-mm, --stiffness-n-per-mm; --keep remembers it with the rig.';
  return ['', ...wrapText(ask, COLS)];
}

function verdictText({ verdict, carPeakN, rigPeakN }: PedalMatch): string {
  const apart = rigPeakN === null ? '' : bothUnits(Math.abs(rigPeakN - carPeakN));
  switch (verdict) {
    case 'close':
      return `Close: ${apart} apart.`;
    case 'fair':
      return `Fair: ${apart} apart. Raise or lower full scale in \`ebbline rig setup\` to come closer.`;
    case 'too light':
      return `Too light by ${apart}. Fit a stiffer spring or block if the pedal and its mount allow it, and set full scale again; else train timing here and force elsewhere.`;
    case 'too heavy':
      return `Too heavy by ${apart}. Set full scale lower in \`ebbline rig setup\`.`;
    case 'unknown':
      return 'The force of this pedal is not known, so it cannot be compared.';
  }
}

function feelLine(name: string, { car, rig }: FeelPair, factor: number, unit: string): string[] {
  if (car === null && rig === null) return [];
  const text = (value: number | null): string =>
    value === null ? 'not known' : `${(value * factor).toFixed(0)} ${unit}`;
  return [`  ${name}: car ${text(car)}, rig ${text(rig)}`];
}

function bothUnits(newtons: number): string {
  return `${newtons.toFixed(0)} N (${lbfFromNewtons(newtons).toFixed(0)} lbf)`;
}

/** A match as plain data; null is not known. */
export function matchJson(car: Car, match: PedalMatch): Record<string, unknown> {
  const { carPeakN, rigPeakN, travelM, deadStrokeM, stiffnessNpm } = match;
  const difference = rigPeakN === null ? null : rigPeakN - carPeakN;
  return {
    car: car.id,
    speed_kmh: rounded(kmhFromMetresPerSecond(match.speedMps)),
    car_peak_force_n: rounded(carPeakN),
    car_peak_force_lbf: rounded(lbfFromNewtons(carPeakN)),
    rig_peak_force_n: rounded(rigPeakN),
    rig_peak_force_lbf: rounded(rigPeakN === null ? null : lbfFromNewtons(rigPeakN)),
    difference_n: rounded(difference),
    difference_lbf: rounded(difference === null ? null : lbfFromNewtons(difference)),
    verdict: match.verdict,
    verdict_basis: 'common practice, no source',
    close_lbf: CLOSE_LBF,
    fair_lbf: FAIR_LBF,
    travel_mm: scaledPair(travelM, 1e3),
    dead_stroke_mm: scaledPair(deadStrokeM, 1e3),
    stiffness_n_per_mm: scaledPair(stiffnessNpm, 1e-3),
    moves_otherwise: match.movesOtherwise,
    drill: match.movesOtherwise.length > 0 ? LONG_PEDAL_COMMAND : null,
    cannot_teach: match.cannotTeach,
  };
}

function scaledPair({ car, rig }: FeelPair, factor: number): FeelPair {
  const scaled = (value: number | null): number | null =>
    rounded(value === null ? null : value * factor);
  return { car: scaled(car), rig: scaled(rig) };
}

function rounded(value: number | null): number | null {
  return value === null ? null : Number(value.toFixed(1));
}
