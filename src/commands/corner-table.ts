import type { CarOverrides } from '../car/car-overrides.ts';
import { apexM } from '../corner/apex.ts';
import type { Corner, CornerBump } from '../corner/corner.ts';
import type { CornerSheet, CornerVariant } from '../corner/corner-sheet.ts';
import { tenths } from '../number-text.ts';
import { wrapText } from '../screens/write-text.ts';
import { distanceText, massText, speedText } from '../unit-text.ts';
import { degreesFromRadians } from '../units.ts';
import type { CommandContext } from './command.ts';
import type { CornerLetter } from './corner-letters.ts';

type Units = CommandContext['units'];

const TEXT_COLS = 66;

/** The numbers of a corner as lines of text: its places, its speeds and gears, and what the variant changes. */
export function cornerTable(
  sheet: CornerSheet,
  variant: CornerVariant,
  corner: Corner,
  letters: readonly CornerLetter[],
  units: Units,
): readonly string[] {
  return [
    ...placeLines(corner, letters, units),
    '',
    row(
      'line',
      `${sheet.line.kind}, ${distance(corner.path.lengthM, units)} from turn-in to straight`,
    ),
    row('turn', turnText(sheet)),
    row(
      'approach',
      `${speedText(corner.approachSpeedMps, units)} on ${distance(corner.approachM, units)}`,
    ),
    row('gears', gearText(corner, units)),
    row('grip to use', `${percent(corner.gripShare)} %`),
    ...carLines(variant.car, units),
    ...markLines(corner, units),
    ...(variant.call === null ? [] : [row('late call', variant.call)]),
    ...(variant.note === null
      ? []
      : [...wrapText(variant.note, TEXT_COLS).map((line, i) => row(i === 0 ? 'note' : '', line))]),
    ...wrapText(sheet.variants.map(({ name }) => name).join(', '), TEXT_COLS).map((line, i) =>
      row(i === 0 ? 'variants' : '', line),
    ),
  ];
}

function placeLines(corner: Corner, letters: readonly CornerLetter[], units: Units): string[] {
  const apex = apexM(corner.path);
  const heads = ['', 'before apex', 'radius', 'slope', 'bank'];
  const rows = letters.map(({ letter, name, sM }) => {
    const bump = corner.bumps.find(({ atM }) => letter === 'o' && atM === sM);
    const curvature = Math.abs(corner.path.curvatureAt(sM));
    return [
      `${letter}  ${name}${bump === undefined ? '' : bumpText(bump, units)}`,
      distance(apex - sM, units),
      curvature < 1e-4 ? '-' : distance(1 / curvature, units),
      `${percent(corner.slopeAt(sM))} %`,
      `${percent(corner.bankAt(sM))} %`,
    ];
  });
  return [heads, ...rows].map(([name, ...cells]) =>
    `${name!.padEnd(32)}${cells.map((cell) => cell.padStart(12)).join('')}`.trimEnd(),
  );
}

function bumpText({ lengthM, depth }: CornerBump, units: Units): string {
  return ` of ${distance(lengthM, units)}, ${percent(depth)} % of load`;
}

function turnText({ line }: CornerSheet): string {
  const side = (sign: number): string => (sign > 0 ? 'left' : 'right');
  const first = `${degreesFromRadians(line.turnRad).toFixed(0)}° ${side(line.sign)}`;
  if (line.kind !== 'chicane') return first;
  return `${first}, then ${degreesFromRadians(line.secondTurnRad).toFixed(0)}° ${side(-line.sign)}`;
}

function markLines({ coachMark, path }: Corner, units: Units): string[] {
  if (coachMark === null) return [];
  const place = distance(apexM(path) - coachMark.sM, units);
  return [row('coach mark', `${coachMark.word}, ${place} before the apex`)];
}

function gearText({ gears, path }: Corner, units: Units): string {
  const change = `${gears.approach} to ${gears.slowest}`;
  if (gears.shiftsAtM === null) return `${change}, each downshift as early as is safe`;
  const apex = apexM(path);
  const places = gears.shiftsAtM.map((sM) => distance(apex - sM, units));
  return `${change}, downshifts ${places.join(', ')} before the apex`;
}

function carLines(car: CarOverrides, units: Units): string[] {
  const parts = [
    car.gripFactor === undefined ? null : `grip times ${car.gripFactor}`,
    car.fuelKg === undefined ? null : `fuel ${massText(car.fuelKg, units)}`,
    car.tyreState === undefined ? null : `tyres ${car.tyreState}`,
    car.balanceBarFront === undefined
      ? null
      : `balance bar ${percent(car.balanceBarFront)} % front`,
    car.batteryFull === true ? 'battery full' : null,
  ].filter((part) => part !== null);
  return parts.length === 0 ? [] : [row('car', parts.join(', '))];
}

function row(name: string, text: string): string {
  return `${name.padEnd(14)}${text}`;
}

function percent(share: number): string {
  return tenths(share).replace(/\.0$/, '');
}

function distance(metres: number, units: Units): string {
  return distanceText(metres, units, 1);
}
