import { openExistingHistory } from '../history/open-history.ts';
import { loadBetterSqlite } from '../history/sql/better-sqlite.ts';
import { loadNodeSqlite } from '../history/sql/node-sqlite.ts';
import { discoverDevices, likelyRigDevices } from '../input/discovery/discover-devices.ts';
import type { FoundDevice } from '../input/discovery/found-device.ts';
import { loadRig } from '../input/rig/rig-file.ts';
import { Problem } from '../problem.ts';
import { isUtf8 } from '../screens/look.ts';
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

export const command: Command = {
  name: 'doctor',
  summary: 'what works on this machine and what to do about the rest',
  positionals: '',
  options: { json: { type: 'boolean', help: 'print one JSON object' } },
  examples: ['ebbline doctor'],
  run: async ({ values }, context) => {
    const findings = await examine(context);
    const broken = findings.some(({ verdict }) => verdict === 'broken');
    if (values.json === true) context.out(`${JSON.stringify({ findings })}\n`);
    else context.out(`${findingLines(findings).join('\n')}\n`);
    return broken ? 1 : 0;
  },
};

async function examine(context: CommandContext): Promise<Finding[]> {
  const { columns, rows } = process.stdout;
  const { interactive, env } = context;
  const devices = await findDevices();
  return [
    checkNode(process.version),
    checkTerminal({ interactive, columns, rows, term: env.TERM }),
    checkCharacters(isUtf8(env, process.platform)),
    checkHidLibrary(devices instanceof Problem ? failureOf(devices) : null),
    ...checkDevices(devices instanceof Problem ? null : devices.map(factsOf)),
    ...(await rigFinding(context, devices)),
    historyFinding(context),
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
  return { name, refusal: problem === null ? null : failureOf(problem) };
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
