// The least program that shows a brake level: node-hid, and a line on the terminal for each change. Its argument has the
// device's path and where in a report the 16 bits of the brake are, with the counts of 0 and 100 %.
import { writeSync } from 'node:fs';
import HID from 'node-hid';

const { path, at, rest, full } = JSON.parse(process.argv[2]);
const device = await HID.HIDAsync.open(path, { nonExclusive: true });
let shown = null;
device.on('error', () => undefined);
device.on('data', (report) => {
  const percent = Math.round((100 * (report.readUInt16LE(at) - rest)) / (full - rest));
  if (percent === shown) return;
  shown = percent;
  writeSync(1, `\x1b[?2026h\x1b[Hbrake ${String(percent).padStart(3)} %\x1b[?2026l`);
});
