import { type RandomSource, seededRandom } from '../seeded-random.ts';
import type { PlannedBlock, PlanZone, PracticePlan, RepOrder, RepPhase } from './practice-plan.ts';
import { drawVariation, type Variation } from './variation.ts';
import { zoneOrder } from './zone-order.ts';

/** One rep as it is planned. */
export interface PlannedRep<Zone = PlanZone> {
  readonly zone: Zone;
  /** Null for the plain target. */
  readonly variation: Variation | null;
}

/** A block of one practice, with everything decided. */
export interface PracticeBlock<Zone = PlanZone> {
  readonly phase: RepPhase;
  readonly order: RepOrder;
  /** At least one. */
  readonly reps: readonly PlannedRep<Zone>[];
}

/** What is known when a practice begins. */
interface PracticeStart<Zone> {
  /** What first-of-day and warm-up reps are driven on. */
  readonly first: Zone;
  /** The plan's zones as the driver may drive them today, in the plan's order. */
  readonly zones: readonly Zone[];
  /** 24 h or more after the last rep, on a first zone that is known. */
  readonly newDay: boolean;
  /** What the weekly check is driven on; null where none is due. */
  readonly carryOver: Zone | null;
  readonly seed: number;
}

/**
 * The blocks of one practice: the cold reps first, because only they are cold; then the warm-up, the plan's blocks, and
 * the carry-over check last, where it cannot help what it is compared with.
 *
 * @param varies whether a zone can be varied: targets can, corners of the live car cannot
 */
export function practiceBlocks<Zone>(
  plan: Pick<PracticePlan, 'firstOfDayReps' | 'warmUpReps' | 'blocks' | 'carryOver'>,
  { first, zones, newDay, carryOver, seed }: PracticeStart<Zone>,
  varies: (zone: Zone) => boolean,
): readonly PracticeBlock<Zone>[] {
  return [
    ...sameZone('first-of-day', first, newDay ? plan.firstOfDayReps : 0),
    ...sameZone('warm-up', first, plan.warmUpReps),
    ...plannedBlocks(plan.blocks, zones, seed, varies),
    ...(carryOver === null ? [] : sameZone('carry-over', carryOver, plan.carryOver?.reps ?? 0)),
  ];
}

function sameZone<Zone>(phase: RepPhase, zone: Zone, count: number): PracticeBlock<Zone>[] {
  if (count === 0) return [];
  const reps = Array.from({ length: count }, () => ({ zone, variation: null }));
  return [{ phase, order: 'blocked', reps }];
}

function plannedBlocks<Zone>(
  blocks: readonly PlannedBlock[],
  zones: readonly Zone[],
  seed: number,
  varies: (zone: Zone) => boolean,
): PracticeBlock<Zone>[] {
  let before: number | null = null;
  return blocks.map(({ order, reps, vary }, i) => {
    const random: RandomSource = seededRandom(seed, i);
    const places = zoneOrder(order, zones.length, reps, random, before);
    before = places.at(-1)!;
    const planned = places.map((place) => {
      const zone = zones[place]!;
      const varied = vary !== null && varies(zone);
      return { zone, variation: varied ? drawVariation(vary, random) : null };
    });
    return { phase: 'block', order, reps: planned };
  });
}
