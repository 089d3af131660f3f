import type { DerivedTarget } from '../../target/derive/derive-target.ts';
import type { BriefSource } from './brief-corner.ts';
import { bumpLines } from './bump-lines.ts';
import { consistencyLines } from './consistency-lines.ts';
import { gearLine } from './gear-lines.ts';
import { tryFirst } from './try-first.ts';

/** The brief as plain data: the five numbers in SI, places from turn-in (negative before it); the rest in words. */
export function briefJson(sources: readonly BriefSource[]): {
  readonly corners: readonly object[];
} {
  return {
    corners: sources.map(({ derived, gears, reps, outcomes, words, notes }) => ({
      corner: derived.corner.id,
      car: derived.car.id,
      variant: derived.corner.variant,
      ...fiveNumbers(derived),
      gears: gears.map((one) => gearLine(one, 'metric')),
      bumps: bumpLines(derived, 'metric'),
      consistency: consistencyLines(reps),
      try_first: tryFirst(outcomes, words),
      notes,
    })),
  };
}

function fiveNumbers({ keys }: DerivedTarget): Record<string, number> {
  return {
    brake_point_m: keys.brakePoint.sM,
    peak_pedal_force_n: keys.peak.pedalForceN,
    peak_level: keys.peak.level,
    start_of_release_m: keys.startOfRelease.sM,
    apex_level: keys.apex.level,
    slowest_speed_mps: keys.slowest.speedMps,
  };
}
