import { fixed, percentText } from '../../number-text.ts';
import type { GripTrace } from '../../target/derive/grip-trace.ts';
import { distanceText, type TextUnits } from '../../unit-text.ts';
import { STANDARD_GRAVITY_MPS2 } from '../../units.ts';
import { mostUsed, nearestIndex, useAt } from './trace-places.ts';

/** What is read off a g-g diagram. */
interface GgRead {
  readonly target: GripTrace | null;
  /** The newest last. */
  readonly own: readonly GripTrace[];
}

/** A use above this is beyond the limit: the two formulations of the car agree within it. */
const BEYOND = 1.005;
/** A target within this of the limit is limited by it. */
const AT_LIMIT = 0.98;

/** One line: how much of the grip is used at turn-in, and where most of it is, or where more is asked than there is. */
export function ggReading({ target, own }: GgRead, units: TextUnits = 'metric'): string {
  const last = own.at(-1);
  if (last !== undefined) {
    const asked = target === null ? null : turnInUse(target);
    const beside = asked === null ? '' : `, the target ${percentText(asked)}`;
    const uses = own.length > 1 ? 'The last rep uses' : 'You use';
    return `${turnInText(last, uses, beside)}${mostText(last, units)}`;
  }
  return target === null
    ? ''
    : `${turnInText(target, 'The target uses', '')}${limitText(target, units)}${tradeText(target)}`;
}

function turnInUse(trace: GripTrace): number | null {
  const index = nearestIndex(trace, 0);
  return index === null ? null : useAt(trace, index).use;
}

function turnInText(trace: GripTrace, uses: string, beside: string): string {
  const use = turnInUse(trace);
  if (use === null) return '';
  return `${uses} ${percentText(use)} of the grip at turn-in${beside}. `;
}

function mostText(trace: GripTrace, units: TextUnits): string {
  const index = mostUsed(trace);
  if (index === null) return '';
  const { use, axle } = useAt(trace, index);
  const beyond = trace.placeM.findIndex((_, i) => useAt(trace, i).use > BEYOND);
  if (beyond < 0)
    return `Most: ${percentText(use)}, ${axle} axle, ${whereText(trace.placeM[index]!, units)}.`;
  const place = whereText(trace.placeM[beyond]!, units);
  return `More is asked of the ${useAt(trace, beyond).axle} axle than it has, first ${place}.`;
}

/** Which axle the target is limited by, where it is at the limit. */
function limitText(trace: GripTrace, units: TextUnits): string {
  const atLimit = Array.from(trace.placeM, (sM, i) => ({ sM, ...useAt(trace, i) })).filter(
    ({ use }) => use > AT_LIMIT,
  );
  const changes = atLimit.filter(({ axle }, i) => i > 0 && axle !== atLimit[i - 1]!.axle);
  const [first, change] = [atLimit[0], changes[0]];
  if (first === undefined) return mostText(trace, units);
  if (change === undefined) return `The ${first.axle} axle limits it.`;
  if (changes.length > 1) return 'The front and the rear axle limit it in turn.';
  return `The ${first.axle} axle limits it, the ${change.axle} axle from ${whereText(change.sM, units)}.`;
}

/** A place along the road in words. */
function whereText(sM: number, units: TextUnits): string {
  if (Math.abs(sM) < 0.5) return 'turn-in';
  return `${distanceText(Math.abs(sM), units, 0)} ${sM < 0 ? 'before' : 'after'} turn-in`;
}

/** Braking that is left beside half of the most cornering: what trail braking is worth here. */
function tradeText({ accelXMps2, accelYMps2 }: GripTrace): string {
  const most = accelYMps2.reduce((best, across) => Math.max(best, Math.abs(across)), 0);
  const index = accelYMps2.findIndex((across) => Math.abs(across) >= most / 2);
  const along = -(accelXMps2[index] ?? 0);
  if (index <= 0 || along <= 0) return '';
  return ` It still brakes with ${gText(along)} while it corners with ${gText(Math.abs(accelYMps2[index]!))}.`;
}

function gText(mps2: number): string {
  return `${fixed(mps2 / STANDARD_GRAVITY_MPS2, 1)} g`;
}
