// Stands in for the HID library where no kernel makes virtual devices real: each device is a named pipe whose reports
// have one length. Loaded in its place by `--import register.mjs`; $STAND_IN_DEVICES lists the devices.
const { EventEmitter } = require('node:events');
const { constants, openSync } = require('node:fs');
const { Socket } = require('node:net');

const devices = JSON.parse(process.env.STAND_IN_DEVICES ?? '[]');

function getHidapiVersion() {
  return '0.0.0';
}

async function devicesAsync() {
  return devices;
}

/** An open device; it is read from the moment someone listens, on the thread that opened it. */
class HIDAsync extends EventEmitter {
  #pipe;
  #length;
  #rest = Buffer.alloc(0);

  static async open(path) {
    const device = devices.find((known) => known.path === path);
    return new HIDAsync(openSync(path, constants.O_RDONLY | constants.O_NONBLOCK), device.length);
  }

  constructor(file, length) {
    super();
    this.#length = length;
    this.#pipe = new Socket({ fd: file, readable: true, writable: false });
    this.#pipe.on('data', (chunk) => this.#take(chunk));
  }

  async close() {
    this.#pipe.destroy();
  }

  #take(chunk) {
    const bytes = this.#rest.length > 0 ? Buffer.concat([this.#rest, chunk]) : chunk;
    const whole = bytes.length - (bytes.length % this.#length);
    for (let at = 0; at < whole; at += this.#length)
      this.emit('data', bytes.subarray(at, at + this.#length));
    this.#rest = bytes.subarray(whole);
  }
}

module.exports = { getHidapiVersion, devicesAsync, HIDAsync };
