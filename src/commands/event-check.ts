import { eventWarnings } from '../drill/event/event-warnings.ts';
import { checkProfiles } from './check-profiles.ts';
import type { Command } from './command.ts';
import { eventFiles } from './event-files.ts';
import { knownProfiles } from './plan-files.ts';

/** Checks event files, the names in them too, and shows every problem at once. */
export const command: Command = {
  name: 'event check',
  summary: 'check event files: every problem with line and column',
  positionals: 'FILE...',
  options: { json: { type: 'boolean', help: 'one JSON object instead of lines' } },
  examples: ['ebbline event check my-event.yaml', 'ebbline event check *.yaml --json'],
  run: async (input, context) =>
    checkProfiles(eventFiles(await knownProfiles(context.dataDir)), eventWarnings, input, context),
};
