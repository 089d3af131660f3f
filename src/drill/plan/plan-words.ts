import { percentText } from '../../number-text.ts';
import type { RepTag } from '../drill-message.ts';
import type { DrillModel } from '../drill-model.ts';
import { lapBlockTitle, lapTitle } from '../event/lap-words.ts';
import { type Fatigue, fatigue, TIRED_REPS } from './fatigue.ts';
import { type PlanProgress, zoneProgress } from './plan-progress.ts';
import type { PlannedPractice, PracticeZone } from './planned-practice.ts';
import { hasNextBlock, isEnough, plannedBlock, plannedRep } from './planned-rep.ts';
import type { PracticeBlock } from './practice-blocks.ts';
import type { RepOrder } from './practice-plan.ts';

/** Where in its plan the practice is and why this rep is driven, for a title; null without a plan. */
export function planTitle(model: DrillModel): string | null {
  const planned = plannedBlock(model);
  const { plan } = model.setup;
  if (plan === null || planned === null) return null;
  if (plan.lapZones !== undefined) return titleInLap(model, plan, plan.lapZones);
  return `${blockOf(plan, model.block.number)}: ${whyDriven(model, planned)}`;
}

function titleInLap({ block, stage }: DrillModel, plan: PlannedPractice, zones: number): string {
  if (stage.kind === 'summary') return lapBlockTitle(plan, zones, block.number);
  const place = stage.kind === 'after' ? stage.rep.place : Math.min(block.place, block.reps);
  return lapTitle(plan, zones, block.number, place);
}

/** A block of a plan with what it is for, for a heading. */
export function blockTitle(plan: PlannedPractice, number: number): string {
  if (plan.lapZones !== undefined) return lapBlockTitle(plan, plan.lapZones, number);
  return `${blockOf(plan, number)}: ${pacedWords(plan.blocks[number - 1]!)}`;
}

function blockOf({ blocks }: PlannedPractice, number: number): string {
  return `block ${number} of ${blocks.length}`;
}

function whyDriven(model: DrillModel, planned: PracticeBlock<PracticeZone>): string {
  const rep = plannedRep(model);
  const words = blockWords(planned);
  if (rep === null || model.stage.kind === 'summary') return words;
  const task = planned.phase === 'block' && rep.zone.paced ? ', paced by the steering' : '';
  return `${words}${task}`;
}

/** What a block is for, and whether the wheel paces all or some of it. */
function pacedWords(block: PracticeBlock<PracticeZone>): string {
  const paced = block.reps.filter(({ zone }) => zone.paced).length;
  if (paced === 0) return blockWords(block);
  const some = paced < block.reps.length ? 'partly ' : '';
  return `${blockWords(block)}, ${some}paced by the steering`;
}

/** What a block is for. */
function blockWords({ phase, order }: Pick<PracticeBlock<unknown>, 'phase' | 'order'>): string {
  switch (phase) {
    case 'first-of-day':
      return 'first of the day';
    case 'warm-up':
      return 'warm-up, not counted';
    case 'carry-over':
      return 'carry-over check';
    case 'block':
      return ORDER_WORDS[order];
  }
}

/** Orders of practice in a driver's words; the literature's stand in the files. */
const ORDER_WORDS: Readonly<Record<RepOrder, string>> = {
  blocked: 'practice',
  serial: 'targets in turn',
  shuffled: 'targets shuffled',
};

/** What a driver has to be told between two blocks of a plan; empty without one. */
export function betweenBlocks(model: DrillModel): readonly string[] {
  const { plan } = model.setup;
  if (plan === null || model.plan === null) return [];
  return [...fatigueNotes(model, plan), nextNote(model, plan)];
}

function nextNote(model: DrillModel, plan: PlannedPractice): string {
  const { number } = model.block;
  const hardReps = model.plan?.hardReps ?? 0;
  if (hasNextBlock(model)) return `Next: ${nextWords(plan, number)}.`;
  const enough = number < plan.blocks.length && isEnough(plan, hardReps);
  if (enough) return `${hardReps} hard reps: that is enough for today.`;
  return endWords(plan, model.block);
}

/** The last block may have been left before its last rep. */
function endWords(
  { lapZones }: PlannedPractice,
  { place, reps }: Pick<DrillModel['block'], 'place' | 'reps'>,
): string {
  const isWhole = place > reps;
  if (lapZones === undefined) return isWhole ? 'The plan is done.' : 'The plan ended early.';
  return isWhole ? 'The laps are done.' : 'The laps ended early.';
}

/** The block after one of that number. */
function nextWords(plan: PlannedPractice, number: number): string {
  if (plan.lapZones !== undefined) return lapBlockTitle(plan, plan.lapZones, number + 1);
  return pacedWords(plan.blocks[number]!);
}

function fatigueNotes(model: DrillModel, plan: PlannedPractice): string[] {
  const zones = [...(model.plan?.zones.keys() ?? [])];
  return zones.flatMap((zone) => tiredWords(zoneProgress(model.plan!, zone).errors, zone, plan));
}

/** What the driver has to be told at the rep with which the leg proved tired; null at every other. */
export function fatigueAtRep(
  { setup: { plan }, plan: before }: Pick<DrillModel, 'setup' | 'plan'>,
  after: PlanProgress | null,
  tag: Pick<RepTag, 'block' | 'place'>,
): string | null {
  if (plan === null || before === null || after === null) return null;
  const { zone } = plan.blocks[tag.block - 1]!.reps[tag.place - 1]!;
  const { errors, beyondLimit } = zoneProgress(after, zone);
  const isNew = beyondLimit === TIRED_REPS && zoneProgress(before, zone).beyondLimit < TIRED_REPS;
  return isNew ? (tiredWords(errors, zone, plan)[0] ?? null) : null;
}

function tiredWords(
  errors: readonly number[],
  zone: PracticeZone,
  plan: PlannedPractice,
): string[] {
  const found = fatigue(errors, plan.hardReps.fatigueLimit, zone.reference);
  return found === null ? [] : [fatigueWords(found, zone, plan)];
}

function fatigueWords(
  { riseLevel, limitLevel }: Fatigue,
  { reference, target }: PracticeZone,
  { condition }: PlannedPractice,
): string {
  const before = reference === null ? 'the first ten reps' : `earlier reps (${condition})`;
  const rise = `${target.name}: release error up ${percentText(riseLevel, 1)} on ${before}`;
  return `${rise}, limit ${percentText(limitLevel, 1)}. Tired leg: stop here.`;
}
