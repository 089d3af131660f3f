/**
 * The curve that never rises and is closest to the values (least squares), by pooling neighbours that rise (Barlow,
 * Bartholomew, Bremner and Brunk, Statistical Inference under Order Restrictions, 1972, section 1.2).
 */
export function fallingFit(values: Float64Array): Float64Array {
  const pools: { sum: number; count: number }[] = [];
  for (const value of values) {
    let pool = { sum: value, count: 1 };
    for (let last = pools.at(-1); last !== undefined && isAbove(pool, last); last = pools.at(-1)) {
      pool = { sum: pool.sum + last.sum, count: pool.count + last.count };
      pools.pop();
    }
    pools.push(pool);
  }
  return Float64Array.from(
    pools.flatMap(({ sum, count }) => new Array<number>(count).fill(sum / count)),
  );
}

interface Pool {
  readonly sum: number;
  readonly count: number;
}

function isAbove(a: Pool, b: Pool): boolean {
  return a.sum * b.count > b.sum * a.count;
}
