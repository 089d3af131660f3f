import { usageName } from '../../hid/usage-name.ts';
import type { AxisListing, DeviceListing } from './device-listing.ts';

/** The answer of `rig list --json`. */
export function listingJson(listings: readonly DeviceListing[]): object {
  return { devices: listings.map(deviceJson) };
}

function deviceJson({ device, axes, buttons, learntRoles }: DeviceListing): object {
  const { identity } = device;
  return {
    name: device.name,
    maker: device.maker,
    vendor_id: identity.vendorId,
    product_id: identity.productId,
    serial: identity.serial,
    interface: identity.interfaceNumber,
    path: device.path,
    kind: device.kind,
    problem: device.problem?.message ?? null,
    has_descriptor: device.descriptor !== null,
    axes: axes.map(axisJson),
    buttons,
    learnt_roles: learntRoles,
  };
}

function axisJson({ field, roles }: AxisListing): object {
  return {
    usage: usageName(field.usagePage, field.usageId),
    report_id: field.reportId,
    bit_offset: field.bitOffset,
    bit_size: field.bitSize,
    logical_min_counts: field.logicalMin,
    logical_max_counts: field.logicalMax,
    roles,
  };
}
