import { distanceText, type TextUnits } from '../../unit-text.ts';
import { missedFault, SHIFT_POINTS, safeLaterM, toldOfShift } from '../describe-live.ts';
import type { Fault } from '../fault.ts';
import type { ScoredShift } from '../live-measures.ts';
import { quantile } from '../quantile.ts';
import type { RepScore } from '../rep-score.ts';
import { sharedGroup } from '../shared-group.ts';
import type { FoundTrouble } from './found-trouble.ts';

/** A downshift that three reps or more made at the wrong place, or never made. */
export function gearTrouble(scored: readonly RepScore[], units: TextUnits): FoundTrouble | null {
  return wrongShift(scored, units) ?? missedShift(scored);
}

function wrongShift(scored: readonly RepScore[], units: TextUnits): FoundTrouble | null {
  // once for each gear of a rep: its group counts reps
  const wrong = scored.flatMap(({ live }) => onePerGear(live?.shifts ?? []));
  const shared = sharedGroup(wrong, ({ verdict, toGear }) => `${verdict} ${toGear}`);
  if (shared === null) return null;
  const shift = middleShift(shared);
  const { lost, fault } = toldOfShift(shift, units);
  return {
    part: 'gears',
    fault: fault as Fault,
    change: shiftChange(shift, units),
    lost: lost * shared.length,
    reps: shared.length,
    of: scored.length,
  };
}

function onePerGear(shifts: readonly ScoredShift[]): readonly ScoredShift[] {
  const wrong = shifts.filter(({ verdict }) => verdict !== 'safe');
  return [...new Map(wrong.map((shift) => [shift.toGear, shift])).values()];
}

/** One like all of them, as far from its safe place as the middle one. */
function middleShift(shared: readonly [ScoredShift, ...ScoredShift[]]): ScoredShift {
  const laterM = quantile(
    shared.flatMap((shift) => safeLaterM(shift) ?? []),
    0.5,
  );
  const { atM } = shared[0];
  return { ...shared[0], earliestM: laterM === null ? null : atM + laterM };
}

function shiftChange(shift: ScoredShift, units: TextUnits): string {
  if (shift.verdict === 'late') return `go down to gear ${shift.toGear} sooner`;
  const laterM = safeLaterM(shift);
  const by = laterM === null ? '' : `, by ${distanceText(laterM, units, 0)}`;
  return `go down to gear ${shift.toGear} later${by}`;
}

function missedShift(scored: readonly RepScore[]): FoundTrouble | null {
  const missing = scored.flatMap(({ live }) => (live?.missedDownshifts ? live : []));
  const shared = sharedGroup(missing, ({ missedDownshifts }) => String(missedDownshifts));
  const fault = shared && missedFault(shared[0]);
  if (shared === null || fault === null) return null;
  return {
    part: 'gears',
    fault,
    change: 'make every downshift of the target',
    lost: SHIFT_POINTS * shared.length,
    reps: shared.length,
    of: scored.length,
  };
}
