import { openExistingHistory } from '../history/open-history.ts';
import { loadBetterSqlite } from '../history/sql/better-sqlite.ts';
import { loadNodeSqlite } from '../history/sql/node-sqlite.ts';
import { discoverDevices, likelyRigDevices } from '../input/discovery/discover-devices.ts';
import type { FoundDevice } from '../input/discovery/found-device.ts';
import { UDEV_RELOAD, UDEV_RULES_FILE, udevRules } from '../input/discovery/udev-rules.ts';
import { loadRig } from '../input/rig/rig-file.ts';
import { Problem } from '../problem.ts';
import { isUtf8 } from '../screens/look.ts';
import { findPlayer } from '../sound/find-player.ts';
import type { Command, CommandContext } from './command.ts';
import {
  checkCharacters,
  checkDevices,
  checkHidLibrary,
  checkHistory,
  checkNode,
  checkRig,
  checkTerminal,
  type DeviceFacts,
  type Finding,
  findingLines,
} from './doctor-checks.ts';
import {
  checkAccess,
  checkColours,
  checkDataFolder,
  checkSession,
  platformNote,
} from './doctor-platform.ts';
import { checkSound } from './doctor-sound.ts';
import { whyNotWritable } from './why-not-writable.ts';

export const command: Command = {
  name: 'doctor',
  summary: 'what works on this machine and what to do about the rest',
  positionals: '',
  options: {
    json: { type: 'boolean', help: 'print one JSON object' },
    'udev-rules': { type: 'boolean', help: 'print a udev rules file for the devices found' },
  },
  apart: [
    { one: 'udev-rules', others: ['json'], because: '--udev-rules prints a file, and no answer.' },
  ],
  examples: ['ebbline doctor', `ebbline doctor --udev-rules | sudo tee ${UDEV_RULES_FILE}`],
  run: async ({ values }, context) => {
    if (values['udev-rules'] === true) return printRules(context);
    const findings = await examine(context);
    const broken = findings.some(({ verdict }) => verdict === 'broken');
    if (values.json === true) context.out(`${JSON.stringify({ findings })}\n`);
    else context.out(`${findingLines(findings).join('\n')}\n`);
    return broken ? 1 : 0;
  },
};

async function examine(context: CommandContext): Promise<Finding[]> {
  const { columns, rows } = process.stdout;
  const { interactive, env, dataDir } = context;
  const [devices, player] = await Promise.all([findDevices(), findPlayer()]);
  const found = devices instanceof Problem ? null : devices;
  const note = platformNote(process.platform);
  return [
    checkNode(process.version),
    checkTerminal({ interactive, columns, rows, term: env.TERM }),
    checkCharacters(isUtf8(env, process.platform)),
    checkColours({ wanted: context.color, term: env.TERM, colorTerm: env.COLORTERM }),
    checkSession({ tmux: env.TMUX, ssh: env.SSH_CONNECTION || env.SSH_TTY, term: env.TERM }),
    checkHidLibrary(devices instanceof Problem ? failureOf(devices) : null),
    ...checkDevices(found?.map(factsOf) ?? null),
    ...accessFinding(found ?? []),
    ...(note === null ? [] : [note]),
    ...(await rigFinding(context, devices)),
    checkSound(player),
    checkDataFolder(dataDir, await whyNotWritable(dataDir)),
    historyFinding(context),
  ];
}

/** The rules alone on stdout, for a file. */
async function printRules(context: CommandContext): Promise<number> {
  const devices = likelyRigDevices(await discoverDevices());
  if (devices.length === 0)
    throw new Problem('no pedals or wheel found to write rules for', {
      next: 'Plug them in and run it again.',
    });
  context.out(`${udevRules(devices).join('\n')}\n`);
  context.err(`Belongs into ${UDEV_RULES_FILE}; then: ${UDEV_RELOAD}, and plug them in again.\n`);
  return 0;
}

/** Only Linux asks for rules. */
function accessFinding(devices: readonly FoundDevice[]): Finding[] {
  if (process.platform !== 'linux' || devices.length === 0) return [];
  return [
    checkAccess(
      devices.map(({ identity, name, problem }) => ({
        identity,
        name,
        isBarred: problem !== null,
      })),
    ),
  ];
}

async function findDevices(): Promise<FoundDevice[] | Problem> {
  try {
    return likelyRigDevices(await discoverDevices());
  } catch (error) {
    if (error instanceof Problem) return error;
    throw error;
  }
}

function factsOf({ name, problem }: FoundDevice): DeviceFacts {
  if (problem === null) return { name, refusal: null };
  return { name, refusal: { ...failureOf(problem), fix: 'The udev rules below let you in.' } };
}

/** There is nothing to say of a rig where there is no device to set up. */
async function rigFinding(
  { dataDir }: CommandContext,
  devices: FoundDevice[] | Problem,
): Promise<Finding[]> {
  if (devices instanceof Problem || devices.length === 0) return [];
  return [checkRig((await loadRig(dataDir, devices)) !== null)];
}

function historyFinding({ dataDir }: CommandContext): Finding {
  try {
    openExistingHistory(dataDir)?.close();
  } catch (error) {
    if (error instanceof Problem) return checkHistory(failureOf(error));
    throw error;
  }
  const driver = [loadNodeSqlite(), loadBetterSqlite()].find((loaded) => 'open' in loaded);
  if (driver === undefined || !('open' in driver))
    return checkHistory({ label: dataDir, journal: true });
  return checkHistory({ label: `${dataDir} (${driver.name})`, journal: false });
}

function failureOf({ where, message, next }: Problem): {
  readonly found: string;
  readonly fix: string;
} {
  return { found: where === null ? message : `${where}: ${message}`, fix: next };
}
