import { createHash } from 'node:crypto';
import type { AxisAssignment, Rig } from './rig.ts';

/**
 * A short name for everything that decides what a level means on this rig: devices, fields, calibration and the
 * wheel's lock, whatever order the axes are kept in. Reps compare only within one. Sixteen hexadecimal digits.
 */
export function calibrationId(rig: Pick<Rig, 'axes' | 'wheelLockDeg'>): string {
  const axes = rig.axes.map((axis) => JSON.stringify(axisKey(axis))).sort();
  return createHash('sha256')
    .update(JSON.stringify([axes, rig.wheelLockDeg]))
    .digest('hex')
    .slice(0, 16);
}

/** Levels of such a rig were shares of the driver's own full scale before targets were drilled at their force. */
const IN_NEWTONS = 'levels in newtons';

/** Arrays, because the order of an object's keys would get into the hash. */
function axisKey({ role, device, field, calibration }: AxisAssignment): readonly unknown[] {
  const { vendorId, productId, serial, interfaceNumber, usagePage, usage } = device;
  const { restCounts, fullCounts, deadStart, deadEnd, sensor, load } = calibration;
  return [
    role,
    [vendorId, productId, serial, interfaceNumber, usagePage, usage],
    [field.reportId, field.bitOffset, field.bitSize, field.signed],
    [restCounts, fullCounts, deadStart, deadEnd, sensor],
    load === null ? null : [load.newtonsPerCount, load.zeroCounts, IN_NEWTONS],
  ];
}
