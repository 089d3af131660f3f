import type { Rig } from './rig/rig.ts';
import type { RigDevice } from './rig-device.ts';

/** Counts of the pointer's pedal at the top of the picture. */
export const POINTER_FULL_COUNTS = 65535;

/** The mouse's height as a device: one Simulation Controls brake of 16 bits, 0..65535, unnumbered. */
export const POINTER_DEVICE: RigDevice = {
  identity: {
    vendorId: 0,
    productId: 0,
    serial: null,
    interfaceNumber: -1,
    usagePage: 0x02,
    usage: 0x02,
  },
  name: 'pointer',
  path: 'pointer',
  descriptor: Uint8Array.of(
    ...[0x05, 0x02], // Usage Page (Simulation Controls)
    ...[0x09, 0x02], // Usage (Automobile Simulation Device)
    ...[0xa1, 0x01], // Collection (Application)
    ...[0x09, 0xc5], //   Usage (Brake)
    ...[0x15, 0x00], //   Logical Minimum (0)
    ...[0x27, 0xff, 0xff, 0x00, 0x00], //   Logical Maximum (65535)
    ...[0x75, 0x10], //   Report Size (16)
    ...[0x95, 0x01], //   Report Count (1)
    ...[0x81, 0x02], //   Input (Data, Variable, Absolute)
    0xc0, // End Collection
  ),
};

/** The rig that goes with `POINTER_DEVICE`: a brake and nothing else. */
export const POINTER_RIG: Rig = {
  axes: [
    {
      role: 'brake',
      device: POINTER_DEVICE.identity,
      field: { reportId: 0, bitOffset: 0, bitSize: 16, signed: false },
      calibration: {
        restCounts: 0,
        fullCounts: POINTER_FULL_COUNTS,
        deadStart: 0,
        deadEnd: 0,
        sensor: 'travel',
        load: null,
      },
    },
  ],
  buttons: [],
  wheelLockDeg: null,
  foot: 'right',
  footwear: 'none',
};
