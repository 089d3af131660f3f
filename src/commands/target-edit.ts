import { Problem } from '../problem.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { findEditedCar } from './edited-car.ts';
import { findEdited } from './edited-source.ts';
import { oneNamed } from './one-named.ts';
import { textOption } from './option-value.ts';

const NAME = 'target edit';

/** Moves the points of a target on the terminal. */
export const command: Command = {
  name: NAME,
  summary: 'edit a target by keys, with its curve, rate and grip on the screen',
  positionals: 'TARGET|FILE',
  options: {
    car: { type: 'string', value: 'CAR', help: 'show what this car would do with it' },
    corner: { type: 'string', value: 'CORNER', help: 'in this corner' },
    variant: { type: 'string', value: 'NAME', help: 'variant of the sheet (default its first)' },
    out: { type: 'string', value: 'FILE', help: 'save a copy; never over an existing file' },
  },
  examples: [
    'ebbline target edit my-corner.yaml --car gt --corner kiln-hairpin',
    'ebbline target edit hairpin --out my-hairpin.yaml',
  ],
  run: edit,
};

async function edit(input: CommandInput, context: CommandContext): Promise<number> {
  const named = oneNamed(input, 'target', NAME);
  const out = textOption(input.values.out);
  const source = await findEdited(named, out, context.dataDir);
  const found = await findEditedCar(input.values, source.now.text, context.dataDir);
  requireTerminal(context);
  // The terminal's library is only paid for where it is used.
  const { editOnScreen } = await import('./edit-on-screen.ts');
  context.err(await editOnScreen(source, found, context));
  return 0;
}

function requireTerminal({ interactive, env }: CommandContext): void {
  if (interactive && env.TERM !== 'dumb') return;
  throw new Problem('this needs a terminal that can move its cursor', {
    where: NAME,
    next: 'Run it in a terminal window, or change the file in an editor and run `ebbline target check`.',
  });
}
