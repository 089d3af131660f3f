import type { FieldLocation } from '../hid/report-field.ts';
import type { RigDevice } from '../rig-device.ts';

/** How many bits the pedals' axes have. */
export type PedalBits = 12 | 16;

const GENERIC_DESKTOP = 0x01;
const JOYSTICK = 0x04;

/** Report rates of the two devices. */
export const PEDAL_HZ = 1000;
export const WHEEL_HZ = 500;

export const WHEEL_REPORT_ID = 1;
export const WHEEL_BUTTONS = 10;
export const RIGHT_PADDLE = 0;
export const LEFT_PADDLE = 1;
export const NEXT_BUTTON = 3;

/** The pedals' axes in the order of their report. */
export const PEDAL_AXES = ['throttle', 'brake', 'clutch'] as const;
export type PedalAxis = (typeof PEDAL_AXES)[number];

/** Where the pedals' axes sit in their report, which has no id. */
export function pedalField(axis: PedalAxis, bits: PedalBits): FieldLocation {
  const place = PEDAL_AXES.indexOf(axis);
  return { reportId: 0, bitOffset: place * bits, bitSize: bits, signed: false };
}

export const STEERING_FIELD: FieldLocation = {
  reportId: WHEEL_REPORT_ID,
  bitOffset: 0,
  bitSize: 16,
  signed: true,
};

export function wheelButtonField(button: number): FieldLocation {
  return { reportId: WHEEL_REPORT_ID, bitOffset: 16 + button, bitSize: 1, signed: false };
}

/** Three pedals as one device. */
export function virtualPedals(bits: PedalBits = 16): RigDevice {
  return device(1, 'Virtual pedals', pedalDescriptor(bits));
}

/** A wheel with its two paddles and some buttons. */
export function virtualWheel(): RigDevice {
  return device(2, 'Virtual wheel', WHEEL_DESCRIPTOR);
}

function device(productId: number, name: string, descriptor: Uint8Array): RigDevice {
  const identity = {
    vendorId: 0,
    productId,
    serial: null,
    interfaceNumber: 0,
    usagePage: GENERIC_DESKTOP,
    usage: JOYSTICK,
  };
  return { identity, name, path: `virtual:${productId}`, descriptor };
}

/** Items by USB HID 1.11, section 6.2.2; usages by the HID Usage Tables, page 0x02. */
function pedalDescriptor(bits: PedalBits): Uint8Array {
  return Uint8Array.from([
    ...[0x05, GENERIC_DESKTOP, 0x09, JOYSTICK, 0xa1, 0x01], // Application
    ...[0x05, 0x02, 0x09, 0xc4, 0x09, 0xc5, 0x09, 0xc6], // Accelerator, Brake, Clutch
    ...[0x15, 0x00, 0x27, ...logicalMaximum(bits)],
    ...[0x75, bits, 0x95, 0x03, 0x81, 0x02], // three times `bits`, Data Variable Absolute
    ...padding((3 * bits) % 8),
    0xc0,
  ]);
}

/** Four bytes, so that 65535 is not read as -1. */
function logicalMaximum(bits: PedalBits): readonly number[] {
  const largest = 2 ** bits - 1;
  return [largest & 0xff, largest >> 8, 0, 0];
}

function padding(usedBits: number): readonly number[] {
  return usedBits === 0 ? [] : [0x75, 8 - usedBits, 0x95, 0x01, 0x81, 0x03];
}

const WHEEL_DESCRIPTOR: Uint8Array = Uint8Array.from([
  ...[0x05, GENERIC_DESKTOP, 0x09, JOYSTICK, 0xa1, 0x01, 0x85, WHEEL_REPORT_ID],
  ...[0x05, 0x02, 0x09, 0xc8, 0x16, 0x01, 0x80, 0x26, 0xff, 0x7f], // Steering, -32767 to 32767
  ...[0x75, 0x10, 0x95, 0x01, 0x81, 0x02],
  ...[0x05, 0x09, 0x19, 0x01, 0x29, WHEEL_BUTTONS, 0x15, 0x00, 0x25, 0x01],
  ...[0x75, 0x01, 0x95, WHEEL_BUTTONS, 0x81, 0x02],
  ...padding(WHEEL_BUTTONS % 8),
  0xc0,
]);
