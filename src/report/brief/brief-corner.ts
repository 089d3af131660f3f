import type { RepMeasure } from '../../consistency/rep-measure.ts';
import type { RepOutcome } from '../../score/rep-score.ts';
import type { DerivedTarget } from '../../target/derive/derive-target.ts';
import { speedText, type TextUnits } from '../../unit-text.ts';
import type { BriefCorner, BriefSection } from './brief.ts';
import { bumpLines } from './bump-lines.ts';
import { consistencyLines } from './consistency-lines.ts';
import { gearLine } from './gear-lines.ts';
import { targetNumbers } from './target-numbers.ts';
import { tryFirst } from './try-first.ts';

/** What is known of a corner before a test day. */
export interface BriefSource {
  /** Of the variant the numbers are of. */
  readonly derived: DerivedTarget;
  /** Of the variants whose gears are told. */
  readonly gears: readonly DerivedTarget[];
  /** Advice of the sheet and note of the variant. */
  readonly words: readonly (string | null)[];
  /** Reps that compare with each other, oldest first. */
  readonly reps: readonly RepMeasure[];
  /** Of the newest of them. */
  readonly outcomes: readonly RepOutcome[];
  /** Words of notes, newest first. */
  readonly notes: readonly string[];
}

/** A corner's part of the brief. */
export function briefCorner(source: BriefSource, units: TextUnits): BriefCorner {
  const { derived, gears, words, reps, outcomes, notes } = source;
  const { corner } = derived;
  const sections: BriefSection[] = [
    { name: 'gears', lines: gears.map((one) => gearLine(one, units)) },
    { name: 'bumps', lines: bumpLines(derived, units) },
    { name: 'caution', lines: cautionLines(derived, units) },
    { name: 'consistency', lines: consistencyLines(reps) },
    { name: 'try first', lines: tryFirst(outcomes, words, units) },
    { name: 'notes', lines: notes },
  ];
  return {
    title: corner.name,
    subtitle: `${corner.cornerType}, ${corner.variant}, from ${speedText(corner.approachSpeedMps, units)}`,
    numbers: targetNumbers(derived, units),
    sections: sections.filter(({ lines }) => lines.length > 0),
  };
}

function cautionLines({ zone, keys, car }: DerivedTarget, units: TextUnits): string[] {
  return [
    ...(zone.tooFastMps > 0
      ? [`the corner cannot be made: ${speedText(zone.tooFastMps, units)} too fast at the limit`]
      : []),
    ...(keys.peak.pedalForceN > car.driver.peakPedalForceN
      ? ['the peak asks for more force than this driver has']
      : []),
  ];
}
