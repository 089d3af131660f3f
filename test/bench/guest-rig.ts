import { vi } from 'vitest';
import { discoverDevices } from '../../src/input/discovery/discover-devices.ts';
import type { FoundDevice } from '../../src/input/discovery/found-device.ts';
import { assignedRig } from '../live/assigned-rig.ts';
import { DeviceProcess } from '../live/device-process.ts';
import { PEDALS, WHEEL } from '../live/virtual-rig.ts';
import type { DrillRig } from './drill-rig.ts';

/** The virtual rig as devices of a real kernel, in the guest. */
export async function guestRig(): Promise<DrillRig> {
  const player = new DeviceProcess();
  await player.create(PEDALS);
  await player.create(WHEEL);
  const [pedals, wheel] = [await find(PEDALS.product), await find(WHEEL.product)];
  return {
    player,
    rig: assignedRig(pedals.identity, wheel.identity),
    devices: [
      { ...PEDALS.layout, path: pedals.path },
      { ...WHEEL.layout, path: wheel.path },
    ],
    env: {},
    close: () => player.close(),
  };
}

/** With the patience that an emulated guest needs. */
function find(product: number): Promise<FoundDevice> {
  const look = async (): Promise<FoundDevice> => {
    const found = await discoverDevices();
    const match = found.find(({ identity }) => identity.productId === product);
    if (match === undefined) throw new Error('not found');
    return match;
  };
  return vi.waitFor(look, { timeout: 60_000, interval: 100 });
}
