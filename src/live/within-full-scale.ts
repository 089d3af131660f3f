import type { DerivedTarget } from '../target/derive/derive-target.ts';
import { keyPointsOf } from '../target/derive/zone-key-points.ts';

/**
 * The derived target with no level above full scale: hot pads or a light full scale can ask for more than the pedal gives,
 * and then all of it is the target. The same object where nothing is above.
 */
export function withinFullScale(derived: DerivedTarget): DerivedTarget {
  const { car, corner, zone } = derived;
  if (zone.points.every(({ level }) => level <= 1)) return derived;
  const capped = {
    ...zone,
    points: zone.points.map((point) => (point.level > 1 ? { ...point, level: 1 } : point)),
  };
  return { ...derived, zone: capped, keys: keyPointsOf(car, corner, capped) };
}
