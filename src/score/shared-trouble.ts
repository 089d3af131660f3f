import { NARROWEST_BANDS } from './advice-bands.ts';
import { causeFault } from './describe-cause.ts';
import { BRAKE_POINT_WEIGHT, brakePointFault } from './describe-live.ts';
import { dominantCause } from './dominant-cause.ts';
import { type Fault, fault } from './fault.ts';
import { hitDifference, hitFault } from './hit-fault.ts';
import { quantile } from './quantile.ts';
import type { RepOutcome, RepScore } from './rep-score.ts';
import { REAPPLIED_LIMITS } from './score-version.ts';
import { sharedGroup } from './shared-group.ts';
import {
  type SharedSpeed,
  type SpokenUnits,
  sharedSpeed,
  speedSide,
  speedText,
} from './slowest-speed.ts';

/** What most of some reps had wrong in one part of the braking zone. */
export interface SharedTrouble {
  readonly part: 'slowest speed' | ScoredPart;
  /** In the driver's words, with the medians of the reps that share it. */
  readonly words: string;
  /** Reps that share it. */
  readonly reps: number;
}

type ScoredPart = 'release' | 'hit' | 'smooth' | 'brake point';

interface SharedFault {
  readonly part: ScoredPart;
  readonly fault: Fault;
  readonly reps: number;
}

/**
 * What reps of one target have in common: of what the foot did the one thing that costs them most points. Before it a
 * corner that most of them entered far too fast or too slow, and then only what may have led there.
 *
 * @returns at most two, none unless three reps or more share something that is outside the narrowest bands
 */
export function sharedTroubles(
  outcomes: readonly RepOutcome[],
  units: SpokenUnits = 'metric',
): readonly SharedTrouble[] {
  const scored = outcomes.filter((outcome) => outcome.kind === 'scored');
  const speed = sharedSpeed(outcomes);
  const side = speed === null ? null : speedSide(speed.errorMps);
  const [dearest] = [
    sharedRelease(outcomes),
    sharedHit(scored),
    sharedGoingBack(scored),
    sharedBrakePoint(scored),
  ]
    .filter((found) => found !== null)
    .filter(({ fault: { makes } }) => side === null || makes === null || makes === side)
    .toSorted((a, b) => pointsLost(b.part, scored) - pointsLost(a.part, scored));
  return [
    ...(speed === null ? [] : [speedTrouble(speed, units)]),
    ...(dearest === undefined ? [] : [footTrouble(dearest)]),
  ];
}

function speedTrouble({ errorMps, reps }: SharedSpeed, units: SpokenUnits): SharedTrouble {
  const words = `${speedText(errorMps, units)} too ${speedSide(errorMps)} at the slowest point`;
  return { part: 'slowest speed', words, reps };
}

function footTrouble({ part, fault: { words }, reps }: SharedFault): SharedTrouble {
  return { part, words, reps };
}

function sharedRelease(outcomes: readonly RepOutcome[]): SharedFault | null {
  const shared = dominantCause(outcomes);
  const found = shared && causeFault(shared.cause, NARROWEST_BANDS);
  return found && { part: 'release', fault: found, reps: shared!.reps };
}

function sharedHit(reps: readonly RepScore[]): SharedFault | null {
  const differences = reps.flatMap((rep) => hitDifference(rep, NARROWEST_BANDS) ?? []);
  const shared = sharedGroup(differences, ({ kind, size }) => `${kind} ${Math.sign(size)}`);
  if (shared === null) return null;
  const size = middle(shared.map((one) => one.size));
  return { part: 'hit', fault: hitFault({ ...shared[0], size }), reps: shared.length };
}

function sharedGoingBack(reps: readonly RepScore[]): SharedFault | null {
  const back = reps.filter(
    ({ reapplied, reapplications }) => reapplied > REAPPLIED_LIMITS.full && reapplications > 0,
  );
  const shared = sharedGroup(back, () => 'back');
  const told = fault('back on the brake during the release');
  return shared && { part: 'smooth', fault: told, reps: shared.length };
}

/** Nearer than a foot can time it, a brake point is right. */
function sharedBrakePoint(reps: readonly RepScore[]): SharedFault | null {
  const lives = reps.flatMap(({ live }) => live ?? []);
  const off = lives.filter(
    ({ brakePointErrorS: errorS }) => Math.abs(errorS) >= NARROWEST_BANDS.timingS,
  );
  const shared = sharedGroup(off, ({ brakePointErrorM }) => String(Math.sign(brakePointErrorM)));
  if (shared === null) return null;
  const brakePointErrorM = middle(shared.map((live) => live.brakePointErrorM));
  const told = brakePointFault({ brakePointErrorM });
  return told && { part: 'brake point', fault: told, reps: shared.length };
}

const middle = (values: readonly number[]): number => quantile(values, 0.5)!;

function pointsLost(part: ScoredPart, reps: readonly RepScore[]): number {
  const sum = (lost: (points: RepScore['pointsLost']) => number): number =>
    reps.reduce((all, rep) => all + lost(rep.pointsLost), 0);
  if (part === 'brake point') return BRAKE_POINT_WEIGHT * sum(({ brakePoint }) => brakePoint ?? 0);
  return sum((points) => points[part]);
}
