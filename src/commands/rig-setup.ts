import { discoverDevices, setupCandidates } from '../input/discovery/discover-devices.ts';
import { openHidSource } from '../input/hid-source.ts';
import type { ReportSource } from '../input/report-source.ts';
import { parseLoads } from '../input/rig/parse-load.ts';
import { loadRig } from '../input/rig/rig-file.ts';
import { HARDWARE_CAUTION } from '../input/rig/setup/hardware-caution.ts';
import { Interrupted, ReadlineTerminal } from '../input/rig/setup/readline-terminal.ts';
import { setupRig } from '../input/rig/setup/setup-rig.ts';
import type { SetupTerminal } from '../input/rig/setup/setup-terminal.ts';
import { describeProblem } from '../problem.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';

/** Assigns and calibrates pedals, wheel and buttons by moving them. */
export const command: Command = {
  name: 'rig setup',
  summary: 'assign and calibrate pedals, wheel and buttons by moving them',
  positionals: '',
  options: {
    loads: {
      type: 'string',
      value: 'LIST',
      help: 'known loads to put on a brake that measures force, in N, kgf or lbf',
    },
  },
  examples: ['ebbline rig setup', 'ebbline rig setup --loads 10kgf,20kgf,30kgf'],
  run: setupOnTerminal,
};

const INTERRUPTED = 130;

async function setupOnTerminal(input: CommandInput, context: CommandContext): Promise<number> {
  const terminal = new ReadlineTerminal(process.stdin, process.stdout, context.interactive);
  try {
    return await rigSetup(input, context, terminal, () => openCandidates(context));
  } catch (error) {
    if (!(error instanceof Interrupted)) throw error;
    context.err('\nStopped. What was confirmed is saved.\n');
    return INTERRUPTED;
  } finally {
    terminal.close();
  }
}

/** `rig setup` with its terminal and its source passed in. */
export async function rigSetup(
  { values }: CommandInput,
  context: CommandContext,
  terminal: SetupTerminal,
  open: () => Promise<ReportSource>,
): Promise<number> {
  const loads = typeof values.loads === 'string' ? parseLoads(values.loads) : [];
  const source = await open();
  terminal.say(HARDWARE_CAUTION);
  const known = await loadRig(context.dataDir, source.devices);
  await setupRig({ source, terminal, dataDir: context.dataDir, known, loads });
  return 0;
}

/** Everything that can be opened; what cannot is told, and is the Problem where nothing else is there. */
async function openCandidates(context: CommandContext): Promise<ReportSource> {
  const found = setupCandidates(await discoverDevices());
  const open = found.filter(({ problem }) => problem === null);
  const barred = found.flatMap(({ problem }) => problem ?? []);
  if (open.length === 0 && barred[0] !== undefined) throw barred[0];
  for (const problem of barred) context.err(`${describeProblem(problem)}\n`);
  return openHidSource(open);
}
