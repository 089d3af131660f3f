import { NARROWEST_BANDS } from './advice-bands.ts';
import { describeCause } from './describe-cause.ts';
import { BRAKE_POINT_WEIGHT, brakePointFault } from './describe-live.ts';
import { dominantCause } from './dominant-cause.ts';
import { hitDifference, hitFault } from './hit-fault.ts';
import { quantile } from './quantile.ts';
import type { RepOutcome, RepScore } from './rep-score.ts';
import { REAPPLIED_LIMITS } from './score-version.ts';
import { sharedGroup } from './shared-group.ts';
import { type SpokenUnits, sharedSpeed, speedSide, speedText } from './slowest-speed.ts';

/** What most of some reps did wrong in one part of the braking zone. */
export interface SharedTrouble {
  readonly part: 'slowest speed' | ScoredPart;
  /** In the driver's words, with the medians of the reps that share it. */
  readonly words: string;
  /** Reps that share it. */
  readonly reps: number;
}

type ScoredPart = 'release' | 'hit' | 'smooth' | 'brake point';
type PartTrouble = SharedTrouble & { readonly part: ScoredPart };

/**
 * What reps of one target have in common that costs them most points. A corner that most of them entered far too fast
 * or too slow comes before all that the foot did.
 *
 * @returns null unless at least three reps share something that is outside the narrowest bands
 */
export function sharedTrouble(
  outcomes: readonly RepOutcome[],
  units: SpokenUnits = 'metric',
): SharedTrouble | null {
  const speed = sharedSpeed(outcomes);
  if (speed !== null) {
    const words = `${speedText(speed.errorMps, units)} too ${speedSide(speed.errorMps)} at the slowest point`;
    return { part: 'slowest speed', words, reps: speed.reps };
  }
  const scored = outcomes.filter((outcome) => outcome.kind === 'scored');
  const [dearest] = [
    releaseTrouble(outcomes),
    hitTrouble(scored),
    smoothTrouble(scored),
    brakePointTrouble(scored),
  ]
    .filter((found) => found !== null)
    .toSorted((a, b) => pointsLost(b.part, scored) - pointsLost(a.part, scored));
  return dearest ?? null;
}

function releaseTrouble(outcomes: readonly RepOutcome[]): PartTrouble | null {
  const shared = dominantCause(outcomes);
  const words = shared === null ? '' : describeCause(shared.cause);
  return words === '' ? null : { part: 'release', words, reps: shared!.reps };
}

function hitTrouble(reps: readonly RepScore[]): PartTrouble | null {
  const differences = reps.flatMap((rep) => hitDifference(rep, NARROWEST_BANDS) ?? []);
  const shared = sharedGroup(differences, ({ kind, size }) => `${kind} ${Math.sign(size)}`);
  if (shared === null) return null;
  const size = middle(shared.map((one) => one.size));
  return { part: 'hit', words: hitFault({ ...shared[0], size }).words, reps: shared.length };
}

function smoothTrouble(reps: readonly RepScore[]): PartTrouble | null {
  const back = reps.filter(
    ({ reapplied, reapplications }) => reapplied > REAPPLIED_LIMITS.full && reapplications > 0,
  );
  const shared = sharedGroup(back, () => 'back');
  const words = 'back on the brake during the release';
  return shared && { part: 'smooth', words, reps: shared.length };
}

/** Nearer than a foot can time it, a brake point is right. */
function brakePointTrouble(reps: readonly RepScore[]): PartTrouble | null {
  const lives = reps.flatMap(({ live }) => live ?? []);
  const off = lives.filter(
    ({ brakePointErrorS: errorS }) => Math.abs(errorS) >= NARROWEST_BANDS.timingS,
  );
  const shared = sharedGroup(off, ({ brakePointErrorM }) => String(Math.sign(brakePointErrorM)));
  if (shared === null) return null;
  const brakePointErrorM = middle(shared.map((live) => live.brakePointErrorM));
  const told = brakePointFault({ brakePointErrorM });
  return told && { part: 'brake point', words: told.words, reps: shared.length };
}

const middle = (values: readonly number[]): number => quantile(values, 0.5)!;

function pointsLost(part: ScoredPart, reps: readonly RepScore[]): number {
  const sum = (lost: (points: RepScore['pointsLost']) => number): number =>
    reps.reduce((all, rep) => all + lost(rep.pointsLost), 0);
  if (part === 'brake point') return BRAKE_POINT_WEIGHT * sum(({ brakePoint }) => brakePoint ?? 0);
  return sum((points) => points[part]);
}
