import { checkProfiles } from './check-profiles.ts';
import type { Command } from './command.ts';
import { CORNER_FILES } from './corner-files.ts';

/** Checks corner sheets and shows every problem at once. */
export const command: Command = {
  name: 'corner check',
  summary: 'check corner sheets: every problem with line and column',
  positionals: 'FILE...',
  options: { json: { type: 'boolean', help: 'one JSON object instead of lines' } },
  examples: ['ebbline corner check my-corner.yaml', 'ebbline corner check *.yaml --json'],
  run: (input, context) => checkProfiles(CORNER_FILES, () => [], input, context),
};
