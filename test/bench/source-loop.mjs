// Reads devices through the built program's source, see test/live/loop-process.ts.
import { discoverDevices } from '../../dist/input/discovery/discover-devices.js';
import { openHidSource } from '../../dist/input/hid-source.js';
import { LoopTally } from '../live/loop-tally.mjs';

const tally = new LoopTally();
const found = await discoverDevices();
const source = await openHidSource(
  tally.devices.map(({ path }) => found.find((device) => device.path === path)),
);
source.batches$.subscribe((batch) => {
  const bytes = Buffer.from(batch.bytes.buffer);
  for (let i = 0; i < batch.count; i++) {
    const at = batch.offset[i];
    tally.take(batch.device[i], batch.timeUs[i], bytes.subarray(at, at + batch.length[i]));
  }
});
tally.run();
