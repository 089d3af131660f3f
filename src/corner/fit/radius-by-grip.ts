import { STANDARD_GRAVITY_MPS2 } from '../../units.ts';
import type { ZoneFacts } from './zone-facts.ts';
import { estimated, type Found } from './zone-fit.ts';

/** A grip of 1.4: a racing tyre without downforce (common practice, no source). */
const USUAL_MPS2 = 1.4 * STANDARD_GRAVITY_MPS2;

/** R = v^2 / (mu g), with the grip of whoever knows it best. */
export function radiusByGrip({ signals: { slowestMps }, wish, slowing, share }: ZoneFacts): Found {
  const w = slowestMps ** 2;
  if (wish.grip !== null)
    return estimated(
      w / (wish.grip * STANDARD_GRAVITY_MPS2),
      `slowest speed and the given grip of ${wish.grip}: v^2 / (mu g)`,
    );
  if (wish.car !== null) {
    const taken = Math.min(1, share?.value ?? 1);
    return estimated(
      wish.car.radiusM(slowestMps, taken),
      `slowest speed and ${Math.round(100 * taken)} % of the car's grip`,
    );
  }
  const along = slowing === null ? USUAL_MPS2 : slowing.alongMps2 + slowing.perSpeedSquared * w;
  const mu = along / STANDARD_GRAVITY_MPS2;
  const by = slowing === null ? 'assumed' : 'as the straight braking shows';
  return estimated(w / along, `v^2 / (mu g) with a grip of ${mu.toFixed(2)}, ${by}`);
}
