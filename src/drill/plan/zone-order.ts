import type { RandomSource } from '../seeded-random.ts';
import type { RepOrder } from './practice-plan.ts';

/**
 * Which zone each rep of a block is driven in. Every zone comes as often as every other, the first ones once more where
 * the reps do not divide; shuffled, no zone comes twice in a row (with two zones that is in turn). What practice mixes
 * is kept better and looks worse while it is practised (Shea and Morgan, JEP:HLM 5:179, 1979); in applied settings the
 * gain is small (Czyz et al., Sci Rep 14:15974, 2024).
 *
 * @param zones how many there are, at least one
 * @param before the zone of the rep before the block, which a shuffled block does not begin with; null for none
 * @returns `reps` indices from 0 to `zones - 1`
 */
export function zoneOrder(
  order: RepOrder,
  zones: number,
  reps: number,
  random: RandomSource,
  before: number | null = null,
): readonly number[] {
  const share = (zone: number): number => Math.floor(reps / zones) + (zone < reps % zones ? 1 : 0);
  const shares = Array.from({ length: zones }, (_, zone) => share(zone));
  switch (order) {
    case 'blocked':
      return shares.flatMap((count, zone) => Array.from({ length: count }, () => zone));
    case 'serial':
      return Array.from({ length: reps }, (_, i) => i % zones);
    case 'shuffled':
      return zones === 1
        ? shares.flatMap((count) => Array(count).fill(0))
        : shuffled(shares, random, before);
  }
}

function shuffled(
  shares: readonly number[],
  random: RandomSource,
  before: number | null,
): readonly number[] {
  const left = [...shares];
  const order: number[] = [];
  let last = before;
  for (let rest = sum(left); rest > 0; rest--) {
    last = drawn(left, allowed(left, rest, last), random);
    left[last]!--;
    order.push(last);
  }
  return order;
}

/** Zones after which the rest can still be set so that none follows itself. */
function allowed(left: readonly number[], rest: number, last: number | null): readonly number[] {
  const possible = (next: number): boolean =>
    left.every((count, zone) =>
      zone === next ? count - 1 <= Math.floor((rest - 1) / 2) : count <= Math.ceil((rest - 1) / 2),
    );
  const there = left.flatMap((count, zone) => (count > 0 ? [zone] : []));
  const good = there.filter(possible);
  const others = good.filter((zone) => zone !== last);
  return others.length > 0 ? others : good;
}

/** By chance, the more often the more is left of a zone. */
function drawn(left: readonly number[], zones: readonly number[], random: RandomSource): number {
  let place = random() * sum(zones.map((zone) => left[zone]!));
  for (const zone of zones) {
    place -= left[zone]!;
    if (place < 0) return zone;
  }
  return zones.at(-1)!;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
