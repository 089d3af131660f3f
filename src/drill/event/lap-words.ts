import type { PlannedPractice } from '../plan/planned-practice.ts';

/** Where a rep is in the laps, both from 1. */
interface LapPlace {
  readonly lap: number;
  readonly zone: number;
}

/** The lap and the zone of a rep. @param place of the rep in its block, from 1 */
function lapPlace(
  { blocks }: Pick<PlannedPractice, 'blocks'>,
  zones: number,
  block: number,
  place: number,
): LapPlace {
  const before = blocks.slice(0, block - 1).reduce((sum, { reps }) => sum + reps.length, 0);
  const rep = before + place - 1;
  return { lap: 1 + Math.floor(rep / zones), zone: 1 + (rep % zones) };
}

/** Where in the laps the driver is, for a title. */
export function lapTitle(
  plan: PlannedPractice,
  zones: number,
  block: number,
  place: number,
): string {
  const { lap, zone } = lapPlace(plan, zones, block, place);
  const name = isOutLap(plan, block) ? 'out-lap' : `lap ${lap} of ${lapsOf(plan, zones)}`;
  return `${name}: zone ${zone} of ${zones}`;
}

/** The laps of a block, for a heading. */
export function lapBlockTitle(plan: PlannedPractice, zones: number, block: number): string {
  if (isOutLap(plan, block)) return 'out-lap: first of the day';
  const { lap: first } = lapPlace(plan, zones, block, 1);
  const { lap: last } = lapPlace(plan, zones, block, plan.blocks[block - 1]!.reps.length);
  const laps = first === last ? `lap ${first}` : `laps ${first} to ${last}`;
  return `${laps} of ${lapsOf(plan, zones)}`;
}

function isOutLap({ blocks }: PlannedPractice, block: number): boolean {
  return blocks[block - 1]!.phase === 'first-of-day';
}

function lapsOf({ blocks }: PlannedPractice, zones: number): number {
  return blocks.reduce((sum, { reps }) => sum + reps.length, 0) / zones;
}
