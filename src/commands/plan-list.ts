import { planJson } from '../drill/plan/plan-json.ts';
import type { PracticePlan } from '../drill/plan/practice-plan.ts';
import { countText } from '../number-text.ts';
import type { Command } from './command.ts';
import { type ProfileList, printProfileList } from './list-profiles.ts';
import { PLAN_FILES } from './plan-files.ts';

const LIST: ProfileList<PracticePlan> = {
  heads: ['id', 'name', 'blocks', 'zones'],
  cells: ({ id, value }) => [
    id,
    value.name,
    value.blocks.map(({ reps }) => reps).join('+'),
    zonesText(value),
  ],
  json: ({ value }) => planJson(value),
};

/** Lists the plans that can be named by id. */
export const command: Command = {
  name: 'plan list',
  summary: 'list the practice plans that can be named by id',
  positionals: '',
  options: { json: { type: 'boolean', help: 'one JSON object instead of a table' } },
  examples: ['ebbline plan list', 'ebbline plan list --json'],
  run: (input, context) => printProfileList(PLAN_FILES, LIST, input, context),
};

function zonesText({ zones }: PracticePlan): string {
  const targets = zones.filter(({ kind }) => kind === 'target').length;
  const counted = (count: number, noun: string): string[] =>
    count === 0 ? [] : [countText(count, noun)];
  return [...counted(targets, 'target'), ...counted(zones.length - targets, 'corner')].join(', ');
}
