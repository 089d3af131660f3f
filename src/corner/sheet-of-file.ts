import { overridesOfFile } from '../car/car-overrides.ts';
import { metresPerSecondFromKmh, radiansFromDegrees } from '../units.ts';
import type { CornerFile, GearsFile, VariantFile } from './corner-file.ts';
import type {
  CornerSheet,
  CornerVariant,
  RoadValue,
  SheetGears,
  SheetMark,
} from './corner-sheet.ts';
import type { Line } from './line.ts';

/** The sheet that a file states, in SI. The file has passed `brokenRules`. */
export function sheetOfFile(file: CornerFile, id: string, version: string): CornerSheet {
  return {
    id,
    name: file.name,
    cornerType: file.corner_type,
    advice: oneLine(file.advice),
    version,
    line: lineOfFile(file),
    slope: alongRoad(file.slope ?? [], ({ slope_percent: percent }) => percent),
    bank: alongRoad(file.bank ?? [], ({ bank_percent: percent }) => percent),
    bumps: (file.bumps ?? []).map((bump) => ({
      beforeApexM: bump.before_apex_m,
      lengthM: bump.length_m,
      lossShare: bump.load_loss_share,
    })),
    coachMark: markOf(file),
    variants: file.variants.map((variant) => variantOf(file, variant)),
  };
}

function markOf({ coach_mark: mark }: CornerFile): SheetMark | null {
  return mark === undefined ? null : { beforeApexM: mark.before_apex_m, word: mark.word };
}

function oneLine(text: string | undefined): string | null {
  return text?.trim().replace(/\s+/g, ' ') ?? null;
}

/** The line with zeros where a key is missing that its kind needs: the rules have named those. */
export function lineOfFile({ direction, line }: CornerFile): Line {
  const ends = {
    sign: direction === 'left' ? 1 : -1,
    turnRad: radiansFromDegrees(line.turn_deg),
    radiusM: line.radius_m,
    entryM: line.entry_length_m ?? 0,
    exitM: line.exit_length_m ?? null,
  } as const;
  const second = {
    betweenM: line.between_length_m ?? 0,
    secondRadiusM: line.second_radius_m ?? 0,
  };
  const firstArcRad = radiansFromDegrees(line.first_arc_deg ?? 0);
  switch (line.entry) {
    case 'decreasing-radius':
      return { kind: line.entry, ...ends, ...second, firstArcRad };
    case 'double-apex':
      return {
        kind: line.entry,
        ...ends,
        ...second,
        firstArcRad,
        betweenRadiusM: line.between_radius_m ?? 0,
      };
    case 'chicane':
      return {
        kind: line.entry,
        ...ends,
        ...second,
        secondTurnRad: radiansFromDegrees(line.second_turn_deg ?? 0),
      };
    default:
      return { kind: line.entry === 'clothoid' ? 'clothoid' : 'smooth-apex', ...ends };
  }
}

function alongRoad<T extends { readonly before_apex_m: number }>(
  values: readonly T[],
  percentOf: (value: T) => number,
): RoadValue[] {
  return values
    .map((value) => ({ beforeApexM: value.before_apex_m, ratio: percentOf(value) / 100 }))
    .sort((a, b) => b.beforeApexM - a.beforeApexM);
}

function variantOf(file: CornerFile, variant: VariantFile): CornerVariant {
  const merged = { grip_share: 1, ...file, ...variant };
  return {
    name: variant.variant,
    note: oneLine(variant.note),
    call: variant.call ?? null,
    approachSpeedMps: metresPerSecondFromKmh(merged.approach_speed_kmh),
    approachM: merged.approach_length_m,
    lineFactor: variant.line_factor ?? 1,
    gripShare: merged.grip_share,
    gears: gearsOf(merged.gears),
    car: overridesOfFile(variant),
  };
}

function gearsOf({ approach, slowest, shifts_before_apex_m: shifts }: GearsFile): SheetGears {
  return { approach, slowest, shiftsBeforeApexM: shifts ?? null };
}
