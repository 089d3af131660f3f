import { carWarnings } from '../car/car-warnings.ts';
import { CAR_FILES } from './car-files.ts';
import { checkProfiles } from './check-profiles.ts';
import type { Command } from './command.ts';

/** Checks car files and shows every problem at once. */
export const command: Command = {
  name: 'car check',
  summary: 'check car files: every problem with line and column',
  positionals: 'FILE...',
  options: { json: { type: 'boolean', help: 'one JSON object instead of lines' } },
  examples: ['ebbline car check my-car.yaml', 'ebbline car check *.yaml --json'],
  run: (input, context) => checkProfiles(CAR_FILES, carWarnings, input, context),
};
