// What the processes that play devices share: streams of reports at a rate, ordered by lines on stdin, in JSON, each
// answered with one line. It is a process of its own so that its load is not the reader's.
import { createInterface } from 'node:readline';

/** Open devices by name of the order's `id`. */
const devices = new Map();
/** Streams of reports by the same. */
const streams = new Map();

export function nowUs() {
  const [seconds, nanoseconds] = process.hrtime();
  return seconds * 1e6 + nanoseconds / 1e3;
}

/**
 * Plays devices until stdin ends.
 *
 * @param open makes the device that an order describes: `send` takes a report that is overwritten later, `close` takes
 *   the device away
 */
export function playDevices(open) {
  const orders = { ...ORDERS, create: (order) => void devices.set(order.id, open(order)) };
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
}

const ORDERS = {
  destroy({ id }) {
    streams.delete(id);
    devices.get(id).close();
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
   * holds the last ones until the device is gone. Takes the device out at `unplugS`, if that is given. The answer at
   * the end has the time at which each point of the first line was first sent, in microseconds.
   */
  play({ id, layout, rateHz, points, unplugS = Number.POSITIVE_INFINITY }) {
    const endS = Math.min(unplugS, Math.max(...points.map((line) => line.at(-1)[0])));
    startStream({ id, layout, rateHz, first: 0, end: Number.POSITIVE_INFINITY, burst: 8 });
    Object.assign(streams.get(id), { points, fromUs: nowUs(), unplugS, endS });
  },
};

function startStream({ id, layout, rateHz, first, end, burst }) {
  const report = Buffer.alloc(layout.bytes);
  const periodUs = 1e6 / rateHz;
  const dueUs = nowUs();
  streams.set(id, { id, layout, report, periodUs, n: first, end, burst, dueUs, sentUs: [] });
}

function pack({ report, layout, n, points, fromUs, sentUs }) {
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
  const atUs = nowUs();
  while (points?.[0][sentUs.length]?.[0] <= timeS) sentUs.push(atUs);
  report.writeUInt32LE(Math.floor(atUs) % 2 ** 32, layout.sentUsAt);
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
    devices.get(stream.id).send(stream.report);
    stream.n += 1;
    stream.dueUs += stream.periodUs;
  }
  if (stream.points === undefined) finishStream(stream);
  else finishPlay(stream, (atUs - stream.fromUs) / 1e6);
}

function finishStream({ id, n, end }) {
  if (n < end) return;
  streams.delete(id);
  tell({ finished: id, sentUs: [] });
}

function finishPlay(stream, timeS) {
  if (timeS >= stream.unplugS) ORDERS.destroy(stream);
  if (timeS < stream.endS) return;
  stream.endS = Number.POSITIVE_INFINITY;
  tell({ finished: stream.id, sentUs: stream.sentUs });
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
