import { apexM } from '../corner/apex.ts';
import type { Corner } from '../corner/corner.ts';
import type { CornerSheet, CornerVariant } from '../corner/corner-sheet.ts';
import { planView } from '../corner/plan-view.ts';
import { rounded } from '../target/rounded.ts';
import { degreesFromRadians, kmhFromMetresPerSecond } from '../units.ts';
import type { CornerLetter } from './corner-letters.ts';

const STEP_M = 1;

/** A corner for other programs: arrays over the path at steps of about 1 m, and the places and numbers beside them. */
export function cornerJson(
  sheet: CornerSheet,
  variant: CornerVariant,
  corner: Corner,
  letters: readonly CornerLetter[],
): Record<string, unknown> {
  const { path, gears } = corner;
  const apex = apexM(path);
  const points = planView(path, STEP_M);
  const column = (of: (sM: number) => number): number[] => points.map(({ sM }) => rounded(of(sM)));
  return {
    id: sheet.id,
    name: sheet.name,
    corner_type: sheet.cornerType,
    version: sheet.version,
    advice: sheet.advice,
    variant: variant.name,
    variants: sheet.variants.map(({ name }) => name),
    line: sheet.line.kind,
    path_length_m: rounded(path.lengthM),
    apex_from_turn_in_m: rounded(apex),
    approach_speed_kmh: rounded(kmhFromMetresPerSecond(corner.approachSpeedMps)),
    approach_length_m: corner.approachM,
    grip_share: corner.gripShare,
    gears: {
      approach_gear: gears.approach,
      slowest_gear: gears.slowest,
      shifts_before_apex_m: gears.shiftsAtM?.map((sM) => rounded(apex - sM)) ?? null,
    },
    bumps: corner.bumps.map(({ atM, lengthM, depth }) => ({
      before_apex_m: rounded(apex - atM),
      length_m: lengthM,
      load_loss_share: depth,
    })),
    coach_mark: corner.coachMark && {
      before_apex_m: rounded(apex - corner.coachMark.sM),
      word: corner.coachMark.word,
    },
    call: variant.call,
    places: letters.map(({ name, sM }) => ({
      name,
      before_apex_m: rounded(apex - sM),
    })),
    distance_m: column((sM) => apex - sM),
    curvature_per_m: column((sM) => path.curvatureAt(sM)),
    slope_percent: column((sM) => 100 * corner.slopeAt(sM)),
    bank_percent: column((sM) => 100 * corner.bankAt(sM)),
    x_m: points.map(({ xM }) => rounded(xM)),
    y_m: points.map(({ yM }) => rounded(yM)),
    heading_deg: points.map(({ headingRad }) => rounded(degreesFromRadians(headingRad))),
  };
}
