// A process that plays HID devices to the kernel through /dev/uhid. It takes one order a line on stdin, in JSON, and
// answers each with one line. It is a process of its own so that its load is not the reader's.
import { closeSync, openSync, writeSync } from 'node:fs';
import { createInterface } from 'node:readline';

// linux/uhid.h: event types, and struct uhid_create2_req packed behind the 4-byte type.
const UHID_DESTROY = 1;
const UHID_CREATE2 = 11;
const UHID_INPUT2 = 12;
const CREATE2_BYTES = 4376;
const AT = { name: 4, uniq: 196, size: 260, bus: 262, vendor: 264, product: 268, descriptor: 280 };
const BUS_USB = 3;

/** Open devices by name of the order's `id`. */
const devices = new Map();
/** Streams of reports by the same. */
const streams = new Map();

const orders = {
  create({ id, name, serial, vendor, product, descriptor }) {
    const bytes = Buffer.from(descriptor, 'hex');
    const event = Buffer.alloc(CREATE2_BYTES);
    event.writeUInt32LE(UHID_CREATE2, 0);
    event.write(name, AT.name, 'hex');
    event.write(serial, AT.uniq);
    event.writeUInt16LE(bytes.length, AT.size);
    event.writeUInt16LE(BUS_USB, AT.bus);
    event.writeUInt32LE(vendor, AT.vendor);
    event.writeUInt32LE(product, AT.product);
    bytes.copy(event, AT.descriptor);
    const file = openSync('/dev/uhid', 'r+');
    writeSync(file, event);
    devices.set(id, file);
  },
  destroy({ id }) {
    streams.delete(id);
    const event = Buffer.alloc(4);
    event.writeUInt32LE(UHID_DESTROY, 0);
    writeSync(devices.get(id), event);
    closeSync(devices.get(id));
    devices.delete(id);
  },
  /**
   * Sends reports number `first` to `first + count - 1` of a layout at a rate. A stream that falls behind by more than
   * `burst` reports goes on from now: catching up would overflow the kernel's queue of 63.
   */
  stream({ id, layout, rateHz, first, count, burst = 8 }) {
    startStream({ id, layout, rateHz, first, end: first + count, burst });
  },
  /**
   * Sends values that follow lines between points in time, one list of [seconds, value] per field of the layout, and
   * holds the last ones until the device is gone. Takes the device out at `unplugS`, if that is given.
   */
  play({ id, layout, rateHz, points, unplugS = Number.POSITIVE_INFINITY }) {
    const endS = Math.min(unplugS, Math.max(...points.map((line) => line.at(-1)[0])));
    startStream({ id, layout, rateHz, first: 0, end: Number.POSITIVE_INFINITY, burst: 8 });
    Object.assign(streams.get(id), { points, fromUs: nowUs(), unplugS, endS });
  },
};

function startStream({ id, layout, rateHz, first, end, burst }) {
  const event = Buffer.alloc(6 + layout.bytes);
  event.writeUInt32LE(UHID_INPUT2, 0);
  event.writeUInt16LE(layout.bytes, 4);
  const periodUs = 1e6 / rateHz;
  streams.set(id, { id, layout, event, periodUs, n: first, end, burst, dueUs: nowUs() });
}

function nowUs() {
  const [seconds, nanoseconds] = process.hrtime();
  return seconds * 1e6 + nanoseconds / 1e3;
}

function pack({ event, layout, n, points, fromUs }) {
  const report = event.subarray(6);
  report.fill(0);
  if (layout.reportId > 0) report[0] = layout.reportId;
  const timeS = points === undefined ? 0 : (nowUs() - fromUs) / 1e6;
  for (const [i, { bit, size, start, step, span }] of layout.fields.entries()) {
    // Without a line to follow, value of report n climbs by a step and wraps.
    const value = points === undefined ? start + ((n * step) % span) : valueAt(points[i], timeS);
    putBits(report, bit, size, value);
  }
  if (layout.counter.bytes === 4) report.writeUInt32LE(n >>> 0, layout.counter.at);
  else report.writeUInt16LE(n & 0xffff, layout.counter.at);
  report.writeUInt32LE(Math.floor(nowUs()) % 2 ** 32, layout.sentUsAt);
}

function valueAt(line, timeS) {
  const next = line.findIndex(([s]) => s > timeS);
  if (next === -1) return line.at(-1)[1];
  if (next === 0) return line[0][1];
  const [[fromS, from], [toS, to]] = [line[next - 1], line[next]];
  return Math.round(from + ((to - from) * (timeS - fromS)) / (toS - fromS));
}

function putBits(report, bit, size, value) {
  for (let i = 0; i < size; i++) {
    const set = Math.floor(value / 2 ** i) & 1;
    report[(bit + i) >> 3] |= set << ((bit + i) & 7);
  }
}

function send(stream, atUs) {
  if (atUs - stream.dueUs > stream.burst * stream.periodUs) stream.dueUs = atUs;
  while (stream.dueUs <= atUs && stream.n < stream.end) {
    pack(stream);
    writeSync(devices.get(stream.id), stream.event);
    stream.n += 1;
    stream.dueUs += stream.periodUs;
  }
  if (stream.points === undefined) finishStream(stream);
  else finishPlay(stream, (atUs - stream.fromUs) / 1e6);
}

function finishStream({ id, n, end }) {
  if (n < end) return;
  streams.delete(id);
  tell({ finished: id });
}

function finishPlay(stream, timeS) {
  if (timeS >= stream.unplugS) orders.destroy(stream);
  if (timeS < stream.endS) return;
  stream.endS = Number.POSITIVE_INFINITY;
  tell({ finished: stream.id });
}

/** Sends what is due, sleeps until more is; timers are too coarse for a millisecond. */
function pump() {
  const untilUs = nowUs() + 10_000;
  const sleeper = new Int32Array(new SharedArrayBuffer(4));
  for (let us = nowUs(); streams.size > 0 && us < untilUs; us = nowUs()) {
    for (const stream of streams.values()) send(stream, us);
    const dueUs = Math.min(untilUs, ...[...streams.values()].map((stream) => stream.dueUs));
    Atomics.wait(sleeper, 0, 0, Math.max(0, (dueUs - nowUs()) / 1e3));
  }
  if (streams.size > 0) setImmediate(pump);
}

function tell(message) {
  process.stdout.write(`${JSON.stringify(message)}\n`);
}

createInterface({ input: process.stdin }).on('line', (line) => {
  const { order, number, ...rest } = JSON.parse(line);
  const idle = streams.size === 0;
  try {
    orders[order](rest);
    tell({ done: number });
  } catch (error) {
    tell({ done: number, error: String(error) });
  }
  if (idle && streams.size > 0) setImmediate(pump);
});
