import { planJson } from '../drill/plan/plan-json.ts';
import { planTable } from '../drill/plan/plan-table.ts';
import { planWarnings } from '../drill/plan/plan-warnings.ts';
import type { PracticePlan } from '../drill/plan/practice-plan.ts';
import { wrapText } from '../screens/write-text.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { drillIt } from './drill-it.ts';
import { oneNamed } from './one-named.ts';
import { findPlan } from './plan-files.ts';

const COLS = 80;
const HEAD = 14;

/** Tells what a plan does. */
export const command: Command = {
  name: 'plan show',
  summary: 'what a practice plan does: zones, blocks, feedback, checks',
  positionals: 'PLAN',
  options: { json: { type: 'boolean', help: 'one JSON object, defaults filled in' } },
  examples: ['ebbline plan show maintenance', 'ebbline plan show my-plan.yaml --json'],
  run: show,
};

async function show(input: CommandInput, context: CommandContext): Promise<number> {
  const named = oneNamed(input, 'plan', 'plan show');
  const plan = await findPlan(named, context.dataDir);
  context.out(
    input.values.json === true
      ? `${JSON.stringify(planJson(plan))}\n`
      : `${page(plan)}${drillIt('--plan', named)}`,
  );
  return 0;
}

function page(plan: PracticePlan): string {
  const lines = [
    plan.name,
    ...wrapText(plan.advice ?? '', COLS),
    '',
    ...planTable(plan).flatMap(([head, text]) =>
      wrapText(text, COLS - HEAD).map((line, i) => `${(i === 0 ? head : '').padEnd(HEAD)}${line}`),
    ),
    ...planWarnings(plan).flatMap((warning) => wrapText(`Caution: ${warning}`, COLS)),
  ];
  return lines.map((line) => `${line}\n`).join('');
}
