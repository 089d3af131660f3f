import { monotoneCubic } from '../curve/monotone-cubic.ts';
import { Problem } from '../problem.ts';
import { nearest } from '../profile/nearest.ts';
import { apexM } from './apex.ts';
import type { Corner } from './corner.ts';
import type { CornerSheet, CornerVariant, RoadValue } from './corner-sheet.ts';
import { pathOfLine, scaledLine } from './line.ts';

/**
 * The variant of a sheet that a driver names; the first one for null.
 * @throws Problem (exit code 2) that names the nearest one
 */
export function variantOfSheet(
  { name, variants }: CornerSheet,
  wanted: string | null,
): CornerVariant {
  const found = wanted === null ? variants[0] : variants.find((variant) => variant.name === wanted);
  if (found !== undefined) return found;
  const names = variants.map((variant) => variant.name);
  const close = nearest(wanted ?? '', names);
  throw new Problem(`${name} has no variant ${JSON.stringify(wanted)}`, {
    next: `${close === null ? '' : `Did you mean ${close}? `}It has ${names.join(', ')}.`,
    exitCode: 2,
  });
}

/**
 * The corner of a sheet with one variant applied. What the variant changes about the car is `variantOfSheet(...).car`.
 * @throws Problem (exit code 2) for a variant the sheet does not have
 */
export function buildCorner(sheet: CornerSheet, variantName: string | null): Corner {
  const variant = variantOfSheet(sheet, variantName);
  const path = pathOfLine(scaledLine(sheet.line, variant.lineFactor));
  const apex = apexM(path);
  const { approach, slowest, shiftsBeforeApexM } = variant.gears;
  const { coachMark } = sheet;
  return {
    id: sheet.id,
    name: sheet.name,
    cornerType: sheet.cornerType,
    variant: variant.name,
    path,
    approachSpeedMps: variant.approachSpeedMps,
    approachM: variant.approachM,
    slopeAt: roadAt(sheet.slope, apex),
    bankAt: roadAt(sheet.bank, apex),
    bumps: sheet.bumps.map(({ beforeApexM, lengthM, lossShare }) => ({
      atM: apex - beforeApexM,
      lengthM,
      depth: lossShare,
    })),
    coachMark: coachMark && { sM: apex - coachMark.beforeApexM, word: coachMark.word },
    gears: {
      approach,
      slowest,
      shiftsAtM: shiftsBeforeApexM?.map((beforeM) => apex - beforeM) ?? null,
    },
    gripShare: variant.gripShare,
  };
}

/** A smooth curve through the values, level outside them; nothing where there are none. */
function roadAt(values: readonly RoadValue[], apex: number): (sM: number) => number {
  const knots = values.map(({ beforeApexM, ratio }) => ({ x: apex - beforeApexM, y: ratio }));
  const [first] = knots;
  if (first === undefined) return () => 0;
  return knots.length === 1 ? () => first.y : monotoneCubic(knots);
}
