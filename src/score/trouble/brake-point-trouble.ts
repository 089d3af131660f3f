import { distanceText, type TextUnits } from '../../unit-text.ts';
import { NARROWEST_BANDS } from '../advice-bands.ts';
import { BRAKE_POINT_WEIGHT, brakePointFault } from '../describe-live.ts';
import { quantile } from '../quantile.ts';
import type { RepScore } from '../rep-score.ts';
import { sharedGroup } from '../shared-group.ts';
import { type FoundTrouble, pointsLostTo } from './found-trouble.ts';

/** A brake point that three reps or more missed the same way; nearer than a foot can time it, it is right. */
export function brakePointTrouble(
  scored: readonly RepScore[],
  units: TextUnits,
): FoundTrouble | null {
  const off = scored.flatMap((rep) =>
    rep.live != null && Math.abs(rep.live.brakePointErrorS) >= NARROWEST_BANDS.timingS
      ? { rep, errorM: rep.live.brakePointErrorM }
      : [],
  );
  const shared = sharedGroup(off, ({ errorM }) => String(Math.sign(errorM)));
  const errors = shared?.map(({ errorM }) => errorM) ?? [];
  const errorM = quantile(errors, 0.5) ?? 0;
  const fault = brakePointFault({ brakePointErrorM: errorM }, units);
  if (shared === null || fault === null) return null;
  const reps = shared.map(({ rep }) => rep);
  return {
    part: 'brake point',
    fault,
    change: `brake ${distanceText(Math.abs(errorM), units, 0)} ${errorM > 0 ? 'earlier' : 'later'}`,
    lost: BRAKE_POINT_WEIGHT * pointsLostTo('brakePoint', reps),
    reps: reps.length,
    of: scored.length,
  };
}
