import { trackWarnings } from '../target/trackability.ts';
import { checkProfiles } from './check-profiles.ts';
import type { Command } from './command.ts';
import { TARGET_FILES } from './target-files.ts';

/** Checks target files and shows every problem at once. */
export const command: Command = {
  name: 'target check',
  summary: 'check target files: every problem with line and column',
  positionals: 'FILE...',
  options: { json: { type: 'boolean', help: 'one JSON object instead of lines' } },
  examples: ['ebbline target check my-corner.yaml', 'ebbline target check *.yaml --json'],
  run: (input, context) => checkProfiles(TARGET_FILES, trackWarnings, input, context),
};
