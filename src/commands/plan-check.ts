import { planWarnings } from '../drill/plan/plan-warnings.ts';
import { checkProfiles } from './check-profiles.ts';
import type { Command } from './command.ts';
import { knownProfiles, planFiles } from './plan-files.ts';

/** Checks plan files, the names in them too, and shows every problem at once. */
export const command: Command = {
  name: 'plan check',
  summary: 'check practice plans: every problem with line and column',
  positionals: 'FILE...',
  options: { json: { type: 'boolean', help: 'one JSON object instead of lines' } },
  examples: ['ebbline plan check my-plan.yaml', 'ebbline plan check *.yaml --json'],
  run: async (input, context) =>
    checkProfiles(planFiles(await knownProfiles(context.dataDir)), planWarnings, input, context),
};
