import type { Command } from './command.ts';
import { DRILL_OPTIONS, readDrillOptions } from './drill-options.ts';

export const command: Command = {
  name: 'drill',
  summary: 'drill a braking zone: the main job',
  positionals: '[CORNER]',
  options: DRILL_OPTIONS,
  apart: [
    {
      one: 'theme',
      others: ['plain', 'headless', 'json'],
      because: 'A theme is for the screen; lines have no colours.',
    },
  ],
  examples: [
    'ebbline drill hairpin',
    'ebbline drill hairpin --source virtual:novice --headless --seed 1',
    'ebbline drill --corner kiln-hairpin --car gt --variant wet',
    'ebbline drill --plan maintenance',
    'ebbline drill --event sallow-fen --laps 3',
    'ebbline drill --source pointer',
    'ebbline drill hairpin --plain',
  ],
  run: async (input, context) => {
    const options = readDrillOptions(input);
    const isBatch = options.headless || options.json;
    if (options.plain || (context.interactive && context.env.TERM === 'dumb' && !isBatch)) {
      const { drillPlain } = await import('./drill-plain.ts');
      return drillPlain(options, context);
    }
    if (isBatch || !context.interactive) {
      const { drillHeadless } = await import('./drill-headless.ts');
      return drillHeadless(options, context);
    }
    const { drillOnScreen } = await import('./drill-on-screen.ts');
    return drillOnScreen(options, context);
  },
};
