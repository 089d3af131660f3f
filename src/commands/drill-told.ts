import type { DoneRep } from '../drill/drill-model.ts';
import type { DrillSetup } from '../drill/drill-setup.ts';
import type { BlockSummary, PlanView, RepLine } from '../drill/drill-view.ts';
import { LAP_HEADS, lapRows } from '../drill/event/lap-table.ts';
import { blockTitle } from '../drill/plan/plan-words.ts';
import { repLine } from '../drill/rep-line.ts';
import { summaryLines } from '../drill/summary-lines.ts';
import { type DrilledBy, drillJson, planDrillJson } from './drill-json.ts';
import { textColumns } from './text-columns.ts';

/** A rep as it was told to the driver. */
export interface ToldRep {
  readonly line: RepLine;
  readonly rep: DoneRep;
}

/** A block as it was told to the driver. */
export interface ToldBlock {
  readonly summary: BlockSummary;
  readonly plan: PlanView | null;
}

/** All that a drill without a screen has told so far. */
export interface Told {
  readonly reps: ToldRep[];
  readonly summaries: ToldBlock[];
}

export function newTold(): Told {
  return { reps: [], summaries: [] };
}

/** The last rep as lines of text; in a plan under the heading of its block and with the name of its target. */
export function repTexts(
  { reps }: Told,
  { plan, units }: Pick<DrillSetup, 'plan' | 'units'>,
): readonly string[] {
  const { line, rep } = reps.at(-1)!;
  const text = repLine(line, units);
  const warned = line.warning === null ? [] : [line.warning];
  if (plan === null) return [text, ...warned];
  const { block } = rep.tag;
  const isFirst = reps.at(-2)?.rep.tag.block !== block;
  const names = plan.blocks.flatMap((planned) => planned.reps.map(({ zone }) => zone.target.name));
  const width = Math.max(...names.map(({ length }) => length));
  const named = `${rep.gridTarget.name.padEnd(width)}  ${text}`;
  return [...(isFirst ? ['', blockTitle(plan, block)] : []), named, ...warned];
}

/** A block's summary; in a plan for each target, and with what comes next. */
export function summaryTexts(summary: BlockSummary, plan: PlanView | null): readonly string[] {
  if (plan === null) return summaryLines(summary);
  if (plan.lap !== null) return [...lapLines(plan), ...plan.notes];
  const named = plan.summaries.length > 1;
  return [
    ...plan.summaries.flatMap((one) => [
      ...(named ? [one.targetName] : []),
      ...summaryLines(one.summary),
    ]),
    ...plan.notes,
  ];
}

function lapLines({ summaries }: PlanView): readonly string[] {
  return [
    '',
    ...textColumns([LAP_HEADS, ...lapRows(summaries)])
      .trimEnd()
      .split('\n'),
    '',
  ];
}

/** What was told as one object: a block, or the blocks of a plan. */
export function toldJson({ reps, summaries }: Told, by: DrilledBy): object {
  if (by.setup.plan !== null) return planDrillJson(reps, summaries, by, by.setup.plan);
  const lines = reps.map(({ line }) => line);
  return drillJson({ ...by, lines, summary: summaries.at(-1)?.summary ?? null });
}
