import type { RandomSource } from '../../drill/seeded-random.ts';

const SLICES = 10;
/** Middles of ten equally likely slices of the standard normal distribution: its 5 %, 15 %, ... 95 % quantiles. */
const NORMAL_MIDDLES = [
  -1.6449, -1.0364, -0.6745, -0.3853, -0.1257, 0.1257, 0.3853, 0.6745, 1.0364, 1.6449,
] as const;

/**
 * Random numbers that are evenly spread over every ten draws: each ten hold every tenth of the distribution once, in
 * random order. A block of ten reps is then a fair sample of its driver, and blocks differ less between seeds.
 */
export function fairDraws(random: RandomSource): { uniform(): number; normal(): number } {
  let left: number[] = [];
  const slice = () => {
    if (left.length === 0) left = Array.from({ length: SLICES }, (_, i) => i);
    return left.splice(Math.floor(random() * left.length), 1)[0]!;
  };
  return { uniform: () => (slice() + 0.5) / SLICES, normal: () => NORMAL_MIDDLES[slice()]! };
}
