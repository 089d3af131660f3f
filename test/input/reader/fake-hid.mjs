// A HID library without hardware, on whichever thread loads it; a test moves it through `FakeBus`.
import { EventEmitter } from 'node:events';
import { writeSync } from 'node:fs';

let channel;
/** Whether to say on stdout that a device was closed; a thread that ends has no other way. */
let announce = false;
/** Records and open handles by path. */
const plugged = new Map();

function plug(record) {
  return { record, handles: new Set(), refusal: record.refusal ?? null };
}

class FakeHandle extends EventEmitter {
  closed = false;
  #hangs;

  constructor(hangs) {
    super();
    this.#hangs = hangs;
  }

  async close() {
    // As the real library does.
    if (this.closed) throw new Error('device is already closed');
    this.closed = true;
    if (this.#hangs) await new Promise(() => undefined);
    for (const { handles } of plugged.values()) handles.delete(this);
    if (announce) writeSync(1, 'closed\n');
    channel.postMessage({ closedOne: true });
  }
}

const orders = {
  report({ path, reports }) {
    for (const bytes of reports) emit(path, 'data', Uint8Array.from(bytes));
  },
  fail({ path, reason, asError }) {
    emit(path, 'error', asError ? new Error(reason) : reason);
  },
  unplug({ path, reason }) {
    const handles = [...(plugged.get(path)?.handles ?? [])];
    plugged.delete(path);
    for (const handle of handles) {
      handle.emit('error', reason);
      handle.emit('error', reason);
    }
  },
  plug({ record }) {
    plugged.set(record.path, plug(record));
  },
  handles() {
    return [...plugged.values()].reduce((sum, { handles }) => sum + handles.size, 0);
  },
  crash() {
    setImmediate(() => {
      throw new Error('a defect');
    });
  },
};

function emit(path, event, value) {
  for (const handle of plugged.get(path)?.handles ?? []) handle.emit(event, value);
}

function listen(name) {
  channel = new BroadcastChannel(name);
  channel.unref();
  channel.onmessage = ({ data }) => {
    if (data.order === undefined) return;
    const answer = orders[data.order](data);
    channel.postMessage({ done: data.id, answer });
  };
}

async function open(path) {
  const device = plugged.get(path);
  if (device === undefined) throw new Error(`cannot open device with path ${path}`);
  if (device.refusal !== null) throw new Error(device.refusal);
  const handle = new FakeHandle(device.record.hangs === true);
  device.handles.add(handle);
  return handle;
}

/** The `loadHid` of a module that stands in for the HID library. */
export function fakeLoadHid({ channel: name, devices, loadFailure, problemModule, announces }) {
  return async () => {
    announce = announces === true;
    if (loadFailure) {
      const { Problem } = await import(problemModule);
      throw new Problem(loadFailure, { next: 'Install it.' });
    }
    listen(name);
    plugged.clear();
    for (const record of devices) orders.plug({ record });
    return { records: async () => [...plugged.values()].map(({ record }) => record), open };
  };
}
