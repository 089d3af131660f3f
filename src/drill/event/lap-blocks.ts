import type { PracticeBlock } from '../plan/practice-blocks.ts';
import type { RepPhase } from '../plan/practice-plan.ts';

/** What is known of the laps when they begin. */
interface LapStart<Zone> {
  /** In lap order. */
  readonly zones: readonly Zone[];
  /** The first lap of the day without a target; null where no such lap is due. */
  readonly outLap: readonly Zone[] | null;
  /** The out-lap is one of them. At least one. */
  readonly laps: number;
  /** The practice ends with the block in which so many hard reps are reached, so no block is longer. */
  readonly mostReps: number;
}

/** The laps of an event as blocks of a practice, one rep a zone: the out-lap by itself, then as many laps in a block as go. */
export function lapBlocks<Zone>({
  zones,
  outLap,
  laps,
  mostReps,
}: LapStart<Zone>): readonly PracticeBlock<Zone>[] {
  const inBlock = Math.max(1, Math.floor(mostReps / zones.length));
  const blocks = outLap === null ? [] : [lapsOf('first-of-day', outLap, 1)];
  for (let left = laps - blocks.length; left > 0; left -= inBlock)
    blocks.push(lapsOf('block', zones, Math.min(left, inBlock)));
  return blocks;
}

function lapsOf<Zone>(phase: RepPhase, zones: readonly Zone[], laps: number): PracticeBlock<Zone> {
  const reps = Array.from({ length: laps }, () => zones)
    .flat()
    .map((zone) => ({ zone, variation: null }));
  return { phase, order: 'serial', reps };
}
