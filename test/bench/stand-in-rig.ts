import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { identifyDevices } from '../../src/input/discovery/identify-devices.ts';
import { assignedRig } from '../live/assigned-rig.ts';
import { DeviceProcess } from '../live/device-process.ts';
import { PEDALS, type VirtualDevice, WHEEL } from '../live/virtual-rig.ts';
import type { DrillRig } from './drill-rig.ts';

const PIPE_DEVICES = new URL('./stand-in/pipe-devices.mjs', import.meta.url);
const REGISTER = new URL('./stand-in/register.mjs', import.meta.url).href;
const SIMULATION_CONTROLS = 2;
const AUTOMOBILE = 2;

/** The virtual rig on a machine whose kernel makes no virtual devices: pipes, and a stand-in for the HID library. */
export async function standInRig(): Promise<DrillRig> {
  const folder = mkdtempSync(join(tmpdir(), 'ebbline-bench-pipes-'));
  const player = new DeviceProcess(PIPE_DEVICES, [folder]);
  const [pedals, wheel] = [record(folder, PEDALS), record(folder, WHEEL)];
  for (const device of [PEDALS, WHEEL]) {
    execFileSync('mkfifo', [join(folder, device.id)]);
    await player.create(device);
  }
  const [brakeDevice, wheelDevice] = identifyDevices([pedals, wheel]);
  return {
    player,
    rig: assignedRig(brakeDevice!.identity, wheelDevice!.identity),
    devices: [
      { ...PEDALS.layout, path: pedals.path },
      { ...WHEEL.layout, path: wheel.path },
    ],
    env: {
      NODE_OPTIONS: `--import=${REGISTER}`,
      STAND_IN_DEVICES: JSON.stringify([pedals, wheel]),
    },
    close: async () => {
      await player.close();
      rmSync(folder, { recursive: true });
    },
  };
}

/** What the HID library would say of a device, with the length of its reports. */
function record(folder: string, { id, name, serial, vendor, product, layout }: VirtualDevice) {
  return {
    vendorId: vendor,
    productId: product,
    path: join(folder, id),
    serialNumber: serial,
    product: Buffer.from(name).toString(),
    interface: -1,
    usagePage: SIMULATION_CONTROLS,
    usage: AUTOMOBILE,
    length: layout.bytes,
  };
}
