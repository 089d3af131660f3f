import type { RandomSource } from '../../drill/seeded-random.ts';

/** Middles of the ten equally likely slices of the standard normal distribution: its 5 %, 15 %, ... 95 % quantiles. */
const SLICES = [
  -1.6449, -1.0364, -0.6745, -0.3853, -0.1257, 0.1257, 0.3853, 0.6745, 1.0364, 1.6449,
] as const;

/**
 * Normal deviates that are evenly spread over every ten draws: each ten hold every slice once, in random order. A
 * block of ten reps is then a fair sample of the driver, and medians of blocks differ less between seeds.
 */
export function stratifiedNormal(random: RandomSource): () => number {
  let left: number[] = [];
  return () => {
    if (left.length === 0) left = [...SLICES];
    return left.splice(Math.floor(random() * left.length), 1)[0]!;
  };
}
