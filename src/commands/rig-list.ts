import { discoverDevices, likelyRigDevices } from '../input/discovery/discover-devices.ts';
import type { FoundDevice } from '../input/discovery/found-device.ts';
import { listDevices } from '../input/rig/listing/device-listing.ts';
import { listingJson } from '../input/rig/listing/listing-json.ts';
import { listingText } from '../input/rig/listing/listing-text.ts';
import { loadRig } from '../input/rig/rig-file.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';

/** Lists what is plugged in, and what of it the rig uses. */
export const command: Command = {
  name: 'rig list',
  summary: 'list pedals and wheels, their axes and what the rig uses',
  positionals: '',
  options: {
    all: { type: 'boolean', help: 'mice, keyboards and everything else too' },
    json: { type: 'boolean', help: 'one JSON object instead of lines' },
  },
  examples: ['ebbline rig list', 'ebbline rig list --all --json'],
  run: (input, context) => rigList(input, context, discoverDevices),
};

/** `rig list` with its discovery passed in. */
export async function rigList(
  { values }: CommandInput,
  context: CommandContext,
  discover: () => Promise<FoundDevice[]>,
): Promise<number> {
  const found = await discover();
  const shown = values.all === true ? found : likelyRigDevices(found);
  const listings = listDevices(shown, await loadRig(context.dataDir, found));
  if (values.json === true) context.out(`${JSON.stringify(listingJson(listings))}\n`);
  else context.out(shown.length === 0 ? nothingFound(found.length) : listingText(listings));
  return 0;
}

function nothingFound(others: number): string {
  const all = others === 0 ? '' : `, \`ebbline rig list --all\` for the ${others} other devices`;
  return `No pedals or wheel found: plug them in${all}, or drive with \`--source virtual\`.\n`;
}
