// Ends in the way it is told while devices are being read. Arguments: the way, the devices, the HID module if it is not
// the real one.
const [, , way, devices, hidModule = null] = process.argv;
const start =
  way === 'direct'
    ? (await import('../../../dist/input/reader/direct-reader.js')).startDirectReader
    : (await import('../../../dist/input/reader/worker-reader.js')).startWorkerReader;
const reader = await start({ devices: JSON.parse(devices), hidModule }, () => undefined);

const ways = {
  'process.exit': () => process.exit(3),
  exception: () => {
    throw new Error('a defect');
  },
  close: () => reader.close(),
  direct: () => reader.close(),
};
setImmediate(ways[way]);
