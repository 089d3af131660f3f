// A process that plays HID devices to the kernel through /dev/uhid, see report-streams.mjs.
import { closeSync, openSync, writeSync } from 'node:fs';
import { playDevices } from './report-streams.mjs';

// linux/uhid.h: event types, and struct uhid_create2_req packed behind the 4-byte type.
const UHID_DESTROY = 1;
const UHID_CREATE2 = 11;
const UHID_INPUT2 = 12;
const CREATE2_BYTES = 4376;
const AT = { name: 4, uniq: 196, size: 260, bus: 262, vendor: 264, product: 268, descriptor: 280 };
const BUS_USB = 3;
const INPUT2_HEADER_BYTES = 6;
/** Longest report of the devices played here. */
const REPORT_BYTES_MAX = 64;

playDevices(({ name, serial, vendor, product, descriptor }) => {
  const file = openSync('/dev/uhid', 'r+');
  writeSync(file, created({ name, serial, vendor, product, descriptor }));
  const event = Buffer.alloc(INPUT2_HEADER_BYTES + REPORT_BYTES_MAX);
  event.writeUInt32LE(UHID_INPUT2, 0);
  return {
    send(report) {
      event.writeUInt16LE(report.length, 4);
      report.copy(event, INPUT2_HEADER_BYTES);
      writeSync(file, event, 0, INPUT2_HEADER_BYTES + report.length);
    },
    close() {
      const destroyed = Buffer.alloc(4);
      destroyed.writeUInt32LE(UHID_DESTROY, 0);
      writeSync(file, destroyed);
      closeSync(file);
    },
  };
});

function created({ name, serial, vendor, product, descriptor }) {
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
  return event;
}
