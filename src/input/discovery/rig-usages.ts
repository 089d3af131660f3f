import type { ParsedDescriptor, ReportField } from '../hid/report-field.ts';

/**
 * Top-level collections of pedals, wheels and what stands in for them, as usage page << 16 | usage (USB HID Usage
 * Tables 1.5): Generic Desktop joystick, gamepad, multi-axis controller; Simulation Controls automobile simulation
 * device and the simulation devices beside it.
 */
const RIG_USAGES: ReadonlySet<number> = new Set([
  0x10004, 0x10005, 0x10008, 0x20001, 0x20002, 0x20003, 0x20004, 0x20005, 0x20006, 0x20007, 0x20008,
  0x20009, 0x2000a, 0x2000b, 0x2000c,
]);

/** Generic Desktop pointer, mouse, keyboard, keypad and system control. */
const DESK_USAGES: ReadonlySet<number> = new Set([0x10001, 0x10002, 0x10006, 0x10007, 0x10080]);
const DIGITIZERS_PAGE = 0x0d;
const GENERIC_DESKTOP_PAGE = 0x01;
const SIMULATION_PAGE = 0x02;

/** Whether a top-level collection is one of pedals, wheels and what stands in for them. */
export function isRigUsage(application: number): boolean {
  return RIG_USAGES.has(application);
}

/** Whether a top-level collection points or types: mouse, keyboard, touchpad, pen. */
export function isDeskUsage(application: number): boolean {
  return DESK_USAGES.has(application) || Math.floor(application / 0x10000) === DIGITIZERS_PAGE;
}

/** Whether any field could be a pedal: an absolute value of several steps on an axis or a simulation control. */
export function hasAxis(descriptor: ParsedDescriptor): boolean {
  return descriptor.fields.some(isAxis);
}

function isAxis(field: ReportField): boolean {
  if (field.relative || !field.variable || field.logicalMax - field.logicalMin < 2) return false;
  if (field.usagePage === SIMULATION_PAGE) return true;
  // X, Y, Z, Rx, Ry, Rz, slider, dial, wheel
  return field.usagePage === GENERIC_DESKTOP_PAGE && field.usageId >= 0x30 && field.usageId <= 0x38;
}
