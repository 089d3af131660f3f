import { monotoneCubic } from '../curve/monotone-cubic.ts';
import { fingerprint } from '../profile/fingerprint.ts';
import { finalReleaseAt, levelAlong, phaseEnds } from './level-phases.ts';
import { steeringCurve } from './steering-along.ts';
import { tabulate } from './tabulate.ts';
import type { Curve, Target, TargetMarks } from './target.ts';
import type { CorridorSpec, TargetAxis, TargetSpec } from './target-spec.ts';

/** The target that a specification describes. The level is tabulated to within `TABLE_TOLERANCE`. */
export function buildTarget(spec: TargetSpec): Target {
  const level = levelCurve(spec);
  return {
    id: spec.id,
    version: targetVersion(spec),
    name: spec.name,
    cornerType: spec.cornerType,
    domain: spec.axis.domain,
    speeds: spec.axis.domain === 'distance' ? spec.axis.speeds : null,
    level,
    steering: steeringCurve(spec),
    gears: spec.gears,
    marks: marksOf(spec),
    peakLevel: spec.phases.peakLevel,
    corridorAt: corridorOf(spec.corridor, level),
    fullScale: spec.fullScale,
    advice: spec.advice,
    learnedFrom: spec.learnedFrom,
  };
}

function corridorOf(
  { floorLevel, share, knots }: CorridorSpec,
  level: Curve,
): Target['corridorAt'] {
  if (knots === undefined) return (x) => Math.max(floorLevel, share * level.at(x));
  const widened = monotoneCubic(knots);
  return (x) => Math.max(floorLevel, share * level.at(x), widened(x));
}

/** Place on the domain's axis of a point so far after the start of the rise. */
function placeOf(axis: TargetAxis, run: number): number {
  return axis.domain === 'time' ? run : axis.brakePointM - run;
}

function levelCurve({ axis, phases }: TargetSpec): Curve {
  const along = levelAlong(phases);
  const length = phaseEnds(phases).release;
  if (axis.domain === 'time') return tabulate(along, 0, length);
  const { brakePointM } = axis;
  return tabulate((distance) => along(brakePointM - distance), brakePointM - length, brakePointM);
}

function marksOf({ axis, phases, turnIn, apex }: TargetSpec): TargetMarks {
  const ends = phaseEnds(phases);
  return {
    rise: placeOf(axis, 0),
    peak: placeOf(axis, ends.rise),
    startOfRelease: placeOf(axis, ends.bleed),
    turnIn,
    apex,
    finalRelease: placeOf(axis, finalReleaseAt(phases)),
    brakeOff: placeOf(axis, ends.release),
  };
}

/** Names, advice, gears, steering and what full scale stands for leave the score as it is, so they are not in it. */
function targetVersion({ axis, phases, turnIn, apex, corridor }: TargetSpec): string {
  return fingerprint(JSON.stringify([1, axis, phases, turnIn, apex, corridor]));
}
