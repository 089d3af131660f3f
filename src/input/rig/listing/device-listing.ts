import type { FoundDevice } from '../../discovery/found-device.ts';
import type { ReportField } from '../../hid/report-field.ts';
import { describedField, deviceFields } from '../device-fields.ts';
import type { AxisAssignment, AxisRole, Rig } from '../rig.ts';
import { sameDevice } from '../same-device.ts';

const BUTTON_PAGE = 0x09;

export interface AxisListing {
  readonly field: ReportField;
  /** What the rig uses it for: two roles for pedals that share an axis, none for an axis without a job. */
  readonly roles: readonly AxisRole[];
}

/** One device as `rig list` shows it. */
export interface DeviceListing {
  readonly device: FoundDevice;
  /** Absolute fields of more than one bit, in report order. */
  readonly axes: readonly AxisListing[];
  readonly buttons: number;
  /** Roles on fields that the descriptor does not name: they were learnt by moving. */
  readonly learntRoles: readonly AxisRole[];
}

/** @param rig Null where none was saved. */
export function listDevices(devices: readonly FoundDevice[], rig: Rig | null): DeviceListing[] {
  return devices.map((device) => listDevice(device, rig?.axes ?? []));
}

function listDevice(device: FoundDevice, assigned: readonly AxisAssignment[]): DeviceListing {
  const fields = deviceFields(device);
  const own = assigned.filter((axis) => sameDevice(axis.device, device.identity));
  const rolesOf = (field: ReportField | null): AxisRole[] =>
    own.filter((axis) => describedField(fields, axis.field) === field).map(({ role }) => role);
  return {
    device,
    axes: fields.filter(isAxis).map((field) => ({ field, roles: rolesOf(field) })),
    buttons: fields.filter(({ usagePage }) => usagePage === BUTTON_PAGE).length,
    learntRoles: rolesOf(null),
  };
}

function isAxis({ variable, relative, bitSize, usagePage }: ReportField): boolean {
  return variable && !relative && bitSize > 1 && usagePage !== BUTTON_PAGE;
}
