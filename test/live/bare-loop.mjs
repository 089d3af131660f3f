// The least program that reads devices with node-hid, see loop-process.ts.
import HID from 'node-hid';
import { LoopTally, nowUs } from './loop-tally.mjs';

const tally = new LoopTally();
for (const [i, { path }] of tally.devices.entries()) {
  const device = await HID.HIDAsync.open(path, { nonExclusive: true });
  device.on('error', () => undefined);
  device.on('data', (report) => tally.take(i, nowUs(), report));
}
tally.run();
