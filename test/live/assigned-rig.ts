import type { AxisAssignment, AxisRole, Rig } from '../../src/input/rig/rig.ts';
import type { DeviceIdentity } from '../../src/input/rig-device.ts';
import { PEDALS, type VirtualDevice, WHEEL } from './virtual-rig.ts';

/** Counts of the brake at rest and at full scale. */
export const BRAKE = { rest: 2000, full: 62_000 } as const;
export const THROTTLE = { rest: 0, full: 4000 } as const;
export const WHEEL_LOCK_DEG = 900;
export const LEFT_STOP = -32_767;

/** The virtual pedals and wheel as a rig that was set up. */
export function assignedRig(pedals: DeviceIdentity, wheel: DeviceIdentity): Rig {
  return {
    axes: [
      axis('brake', { device: PEDALS, field: 0 }, pedals, BRAKE),
      axis('throttle', { device: PEDALS, field: 1 }, pedals, THROTTLE),
      axis('steering', { device: WHEEL, field: 0 }, wheel, { rest: 0, full: LEFT_STOP }),
    ],
    buttons: [],
    wheelLockDeg: WHEEL_LOCK_DEG,
    foot: 'left',
    footwear: 'socks',
  };
}

function axis(
  role: AxisRole,
  { device: { layout }, field }: { readonly device: VirtualDevice; readonly field: number },
  device: DeviceIdentity,
  { rest, full }: { readonly rest: number; readonly full: number },
): AxisAssignment {
  const { bit, size, start } = layout.fields[field]!;
  return {
    role,
    device,
    field: {
      reportId: layout.reportId,
      bitOffset: bit - (layout.reportId > 0 ? 8 : 0),
      bitSize: size,
      signed: start < 0,
    },
    calibration: {
      restCounts: rest,
      fullCounts: full,
      deadStart: 0,
      deadEnd: 0,
      sensor: 'force',
      load: null,
    },
  };
}
