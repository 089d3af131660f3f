import { discoverDevices, setupCandidates } from '../input/discovery/discover-devices.ts';
import { openHidSource } from '../input/hid-source.ts';
import type { ReportSource } from '../input/report-source.ts';
import { parseLoads } from '../input/rig/parse-load.ts';
import { loadRig } from '../input/rig/rig-file.ts';
import { HARDWARE_CAUTION } from '../input/rig/setup/hardware-caution.ts';
import { Interrupted, ReadlineTerminal } from '../input/rig/setup/readline-terminal.ts';
import { dropSetupDraft } from '../input/rig/setup/setup-draft-file.ts';
import { setupRig } from '../input/rig/setup/setup-rig.ts';
import type { SetupTerminal } from '../input/rig/setup/setup-terminal.ts';
import { describeProblem, Problem } from '../problem.ts';
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
    short: {
      type: 'boolean',
      help: 'brake, throttle and wheel, one movement each; buttons if you like',
    },
    buttons: { type: 'boolean', help: 'paddles and wheel buttons alone, the axes as they are' },
    restart: { type: 'boolean', help: 'ask everything, wherever setting up was left' },
    source: {
      type: 'string',
      value: 'SOURCE',
      help: '`virtual`: try it on simulated devices, saving nothing (default: hid)',
    },
  },
  apart: [
    {
      one: 'buttons',
      others: ['short', 'loads', 'restart'],
      because: 'With --buttons no axis is asked for, and every button is.',
    },
    {
      one: 'short',
      others: ['loads', 'restart'],
      because: 'The short set-up asks everything that it asks for anew, and no loads.',
    },
  ],
  examples: [
    'ebbline rig setup',
    'ebbline rig setup --loads 10kgf,20kgf,30kgf',
    'ebbline rig setup --buttons',
    'ebbline rig setup --short --source virtual',
  ],
  run: setupOnTerminal,
};

const INTERRUPTED = 130;

async function setupOnTerminal(input: CommandInput, context: CommandContext): Promise<number> {
  const isVirtual = readSource(input) === 'virtual';
  const terminal = new ReadlineTerminal(process.stdin, process.stdout, context.interactive);
  try {
    if (!isVirtual) return await rigSetup(input, context, terminal, () => openCandidates(context));
    const { openVirtualSetup } = await import('../input/virtual/open-virtual-setup.ts');
    const virtual = openVirtualSetup(terminal);
    return await rigSetup(input, context, virtual.terminal, async () => virtual.source);
  } catch (error) {
    if (!(error instanceof Interrupted)) throw error;
    const kept = 'What was confirmed is saved: `ebbline rig setup` goes on from there.';
    context.err(`\nStopped. ${isVirtual ? '' : kept}\n`);
    return INTERRUPTED;
  } finally {
    terminal.close();
  }
}

/** `rig setup` with its terminal and its source passed in. */
export async function rigSetup(
  input: CommandInput,
  context: CommandContext,
  terminal: SetupTerminal,
  open: () => Promise<ReportSource>,
): Promise<number> {
  const { values } = input;
  const loads = typeof values.loads === 'string' ? parseLoads(values.loads) : [];
  const extent = values.buttons === true ? 'buttons' : values.short === true ? 'short' : 'whole';
  const dataDir = readSource(input) === 'virtual' ? null : context.dataDir;
  const source = await open();
  terminal.say(HARDWARE_CAUTION);
  if (dataDir !== null && values.restart === true) await dropSetupDraft(dataDir);
  const known = dataDir === null ? null : await loadRig(dataDir, source.devices);
  if (extent === 'buttons' && known === null && dataDir !== null) {
    await source.close();
    throw new Problem('there are no pedals yet for buttons to go with', {
      where: '--buttons',
      next: 'Run `ebbline rig setup` once: it learns buttons as well.',
    });
  }
  await setupRig({ source, terminal, dataDir, known, loads, extent });
  return 0;
}

function readSource({ values }: CommandInput): 'hid' | 'virtual' {
  const { source = 'hid' } = values;
  if (source === 'hid' || source === 'virtual') return source;
  throw new Problem(`${JSON.stringify(source)} cannot be set up`, {
    where: '--source',
    next: 'Say `hid` for your devices, or `virtual` to try it on simulated ones.',
    exitCode: 2,
  });
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
