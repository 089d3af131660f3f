import type { RandomSource } from '../seeded-random.ts';
import type { FactorRange, Vary } from './practice-plan.ts';

/** How one rep's target differs from the plain one. */
export interface Variation {
  readonly levelFactor: number;
  /** Of the time from the start of release on. */
  readonly releaseFactor: number;
}

/** Factors come in steps, so that the same target is met again. Fewer than a foot could tell apart are not needed. */
const LEVEL_STEPS = 50;
const RELEASE_STEPS = 20;

/** A variation by chance, each step of a range as likely as the others. */
export function drawVariation({ level, releaseLength }: Vary, random: RandomSource): Variation {
  return {
    levelFactor: drawnFrom(level, LEVEL_STEPS, random),
    releaseFactor: drawnFrom(releaseLength, RELEASE_STEPS, random),
  };
}

/** A multiple of `1 / steps` in the range; its lower end where it holds none. */
function drawnFrom({ from, to }: FactorRange, steps: number, random: RandomSource): number {
  const slack = 1e-9;
  const first = Math.ceil(from * steps - slack);
  const last = Math.floor(to * steps + slack);
  if (last < first) return from;
  return (first + Math.floor(random() * (last - first + 1))) / steps;
}
