// The least program that reads devices with node-hid: what a reader is compared with. Arguments: a JSON list of
// { path, counter: { at, bytes }, sentUsAt }. Reads until stdin ends, then prints what came, in JSON.
import HID from 'node-hid';

const layouts = JSON.parse(process.argv[2] ?? '[]');
const results = layouts.map(() => ({ received: 0, last: -1, lost: 0, latenessUs: [] }));

for (const [i, { path, counter, sentUsAt }] of layouts.entries()) {
  const result = results[i];
  const modulus = 2 ** (8 * counter.bytes);
  const device = await HID.HIDAsync.open(path, { nonExclusive: true });
  device.on('error', () => undefined);
  device.on('data', (report) => {
    const [seconds, nanoseconds] = process.hrtime();
    const atUs = seconds * 1e6 + nanoseconds / 1e3;
    const n = report.readUIntLE(counter.at, counter.bytes);
    result.lost += (n - result.last - 1 + modulus) % modulus;
    result.last = n;
    result.received += 1;
    result.latenessUs.push((atUs - report.readUInt32LE(sentUsAt)) % 2 ** 32);
  });
}
const before = process.cpuUsage();
process.stdout.write('reading\n');
process.stdin.resume();
process.stdin.on('end', () => {
  const { user, system } = process.cpuUsage(before);
  process.stdout.write(JSON.stringify({ results, cpuUs: user + system }));
  process.exit(0);
});
