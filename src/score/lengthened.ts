import { drivenGears } from '../live/driven-gears.ts';
import { STEP_S } from '../live/live-car.ts';
import type { LiveRun } from '../live/live-run.ts';
import { stepOf } from '../live/run-steps.ts';
import { zoneModel, zoneSetting } from '../target/derive/zone-model.ts';
import type { Stretch } from './stretches.ts';

/**
 * How much longer locked wheels made the zone, m: over the stretches in which wheels were locked, the road that was
 * used up beyond what braking at the whole grip would have used for the same loss of speed, ds (1 - D / D_limit).
 */
export function lengthenedM(run: LiveRun, lockUps: readonly Stretch[]): number {
  const { derived } = run.zone;
  const corner = { ...derived.corner, gripShare: 1 };
  const setting = zoneSetting(derived.car, corner);
  const model = zoneModel(derived.zone.model, setting, drivenGears(run));
  const { placeM, speedMps, accelXMps2 } = run.columns;
  let lostM = 0;
  for (const { fromS, toS } of lockUps) {
    for (let i = stepOf(run, fromS); i < stepOf(run, toS); i++) {
      const limit = model.limit(placeM[i]!, speedMps[i]! ** 2).decelerationMps2;
      const lost = limit > 0 ? 1 + accelXMps2[i]! / limit : 0;
      lostM += Math.min(1, Math.max(0, lost)) * speedMps[i]! * STEP_S;
    }
  }
  return lostM;
}
