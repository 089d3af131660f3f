import { discoverDevices, likelyRigDevices } from '../input/discovery/discover-devices.ts';
import { openHidSource } from '../input/hid-source.ts';
import type { ReportSource } from '../input/report-source.ts';
import { readingJson } from '../input/rig/check/reading-json.ts';
import { liveLine, readingText } from '../input/rig/check/reading-text.ts';
import { watchRig } from '../input/rig/check/watch-rig.ts';
import type { Rig } from '../input/rig/rig.ts';
import { loadRig } from '../input/rig/rig-file.ts';
import { sameDevice } from '../input/rig/same-device.ts';
import { Problem } from '../problem.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';

/** A source to watch, and what its bytes mean. */
interface CheckedRig {
  readonly source: ReportSource;
  /** Null where none was set up for these devices. */
  readonly rig: Rig | null;
}

/** Shows how well the rig reports, with a verdict and what to do: rate, jitter, gaps, noise, resolution, drift. */
export const command: Command = {
  name: 'rig check',
  summary: 'judge the rig: rate, jitter, gaps, noise, resolution, stuck axes, drift',
  positionals: '',
  options: {
    seconds: { type: 'string', value: 'N', help: 'how long to watch (default 10)' },
    json: { type: 'boolean', help: 'one JSON object at the end instead of lines' },
  },
  examples: [
    'ebbline rig check',
    'ebbline rig check --seconds 600',
    'ebbline rig check --seconds 30 --json',
  ],
  run: (input, context) => rigCheck(input, context, openConnectedRig),
};

const DEFAULT_SECONDS = 10;
const MOST_SECONDS = 3600;
/** Time at the start and at the end in which nothing is touched; at most half of the whole together. */
const REST_S = 2;

/** `rig check` on a source that is passed in. */
export async function rigCheck(
  { values }: CommandInput,
  context: CommandContext,
  open: (dataDir: string) => Promise<CheckedRig>,
): Promise<number> {
  const seconds = parseSeconds(values.seconds);
  const restS = Math.min(REST_S, seconds / 4);
  const { source, rig } = await open(context.dataDir);
  const live = context.interactive && values.json !== true;
  context.err(instructions(rig, seconds, restS));
  const reading = await watchRig(source, rig, {
    seconds,
    restS,
    onLive: (now) => {
      // A line that wraps cannot be redrawn in place.
      const width = (process.stdout.columns ?? 80) - 1;
      if (live) context.out(`\r\u001b[K${liveLine(now).slice(0, width)}`);
    },
  });
  if (live) context.out('\r\u001b[K');
  context.out(
    values.json === true ? `${JSON.stringify(readingJson(reading))}\n` : readingText(reading),
  );
  return 0;
}

function instructions(rig: Rig | null, seconds: number, restS: number): string {
  const setUp =
    rig === null ? 'No rig is set up for these devices: run `ebbline rig setup`.\n' : '';
  return `${setUp}Touch nothing for ${restS} s; then move everything to its ends; let go ${restS} s before the end, after ${seconds} s.\n`;
}

function parseSeconds(value: CommandInput['values'][string]): number {
  if (value === undefined) return DEFAULT_SECONDS;
  const seconds = Number(value);
  if (value !== '' && seconds > 0 && seconds <= MOST_SECONDS) return seconds;
  throw new Problem(`${JSON.stringify(value)} is not a time to watch`, {
    where: '--seconds',
    next: `Give seconds above 0, up to ${MOST_SECONDS}.`,
    exitCode: 2,
  });
}

/** The devices of the saved rig that are connected, or all likely ones without a rig. */
async function openConnectedRig(dataDir: string): Promise<CheckedRig> {
  const found = await discoverDevices();
  const rig = await loadRig(dataDir, found);
  const devices =
    rig === null
      ? likelyRigDevices(found)
      : found.filter(({ identity }) =>
          [...rig.axes, ...rig.buttons].some(({ device }) => sameDevice(device, identity)),
        );
  return { source: await openHidSource(devices), rig };
}
