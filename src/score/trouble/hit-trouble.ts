import { NARROWEST_BANDS } from '../advice-bands.ts';
import { hitDifference, hitFault } from '../hit-fault.ts';
import { quantile } from '../quantile.ts';
import type { RepScore } from '../rep-score.ts';
import { sharedGroup } from '../shared-group.ts';
import { type FoundTrouble, pointsLostTo } from './found-trouble.ts';

/** What three or more hits had wrong the same way, with the median of how far those were off. */
export function hitTrouble(scored: readonly RepScore[]): FoundTrouble | null {
  const off = scored.flatMap((rep) => {
    const differs = hitDifference(rep, NARROWEST_BANDS);
    return differs === null ? [] : { rep, differs };
  });
  const shared = sharedGroup(off, ({ differs: { kind, size } }) => `${kind} ${Math.sign(size)}`);
  if (shared === null) return null;
  const sizes = shared.map(({ differs }) => differs.size);
  const middle = { kind: shared[0].differs.kind, size: quantile(sizes, 0.5)! };
  return {
    part: 'hit',
    fault: hitFault(middle),
    change: hitChange(middle),
    lost: pointsLostTo(
      'hit',
      shared.map(({ rep }) => rep),
    ),
    reps: shared.length,
    of: scored.length,
  };
}

function hitChange({ kind, size }: NonNullable<ReturnType<typeof hitDifference>>): string {
  if (kind === 'peak')
    return `hit ${Math.round(100 * Math.abs(size))} % ${size < 0 ? 'harder' : 'lighter'}`;
  const ms = 10 * Math.round(100 * Math.abs(size));
  return size > 0 ? `be at the peak ${ms} ms sooner` : `take ${ms} ms more to the peak`;
}
