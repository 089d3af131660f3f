interface Vertex {
  readonly at: readonly number[];
  readonly value: number;
}

const MOST_STEPS = 600;
const CLOSE = 1e-10;

/**
 * The place at which a function of a few numbers is least, from a start and a first step for each of them.
 * @source downhill simplex, Nelder and Mead, Computer Journal 7 (1965) 308, with their coefficients
 */
export function minimise(
  f: (at: readonly number[]) => number,
  start: readonly number[],
  steps: readonly number[],
): Vertex {
  const vertex = (at: readonly number[]): Vertex => ({ at, value: f(at) });
  let simplex = [
    vertex(start),
    ...steps.map((step, i) => vertex(start.map((x, k) => (k === i ? x + step : x)))),
  ];
  for (let step = 0; step < MOST_STEPS; step++) {
    simplex = simplex.toSorted((a, b) => a.value - b.value);
    if (simplex.at(-1)!.value - simplex[0]!.value <= CLOSE * Math.abs(simplex[0]!.value)) break;
    simplex = stepped(simplex, vertex);
  }
  return simplex.reduce((best, one) => (one.value < best.value ? one : best));
}

function stepped(simplex: readonly Vertex[], vertex: (at: readonly number[]) => Vertex): Vertex[] {
  const [kept, worst] = [simplex.slice(0, -1), simplex.at(-1)!];
  const best = simplex[0]!;
  const middle = best.at.map((_, k) => kept.reduce((sum, { at }) => sum + at[k]!, 0) / kept.length);
  const along = (share: number): Vertex =>
    vertex(middle.map((x, k) => x + share * (worst.at[k]! - x)));
  const mirrored = along(-1);
  if (mirrored.value < best.value) {
    const further = along(-2);
    return [...kept, further.value < mirrored.value ? further : mirrored];
  }
  if (mirrored.value < kept.at(-1)!.value) return [...kept, mirrored];
  const inside = along(mirrored.value < worst.value ? -0.5 : 0.5);
  if (inside.value < Math.min(worst.value, mirrored.value)) return [...kept, inside];
  return simplex.map(({ at }, i) =>
    i === 0 ? best : vertex(at.map((x, k) => best.at[k]! + 0.5 * (x - best.at[k]!))),
  );
}
