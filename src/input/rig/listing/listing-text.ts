import { describeProblem } from '../../../problem.ts';
import { usageName } from '../../hid/usage-name.ts';
import { identityText } from '../same-device.ts';
import type { AxisListing, DeviceListing } from './device-listing.ts';

/** Devices and their axes as lines; the last line ends in a line end. */
export function listingText(listings: readonly DeviceListing[]): string {
  return listings.map((listing) => `${deviceLines(listing).join('\n')}\n`).join('\n');
}

function deviceLines(listing: DeviceListing): string[] {
  const { device, axes, buttons, learntRoles } = listing;
  return [
    `${device.name}  (${identityText(device.identity)})`,
    ...axes.map(axisLine),
    ...learntRoles.map((role) => `  ${role}, learnt by moving`),
    ...(buttons > 0 ? [`  ${buttons} ${buttons === 1 ? 'button' : 'buttons'}`] : []),
    ...describedOrNot(listing),
    ...(device.problem === null ? [] : [`  ${describeProblem(device.problem)}`]),
  ];
}

function axisLine({ field, roles }: AxisListing): string {
  const usage = usageName(field.usagePage, field.usageId).padEnd(12);
  const bits = `${field.bitSize} bits`.padEnd(8);
  const range = `${field.logicalMin}..${field.logicalMax}`;
  const use = roles.length === 0 ? '' : `  ${roles.join(' and ')}`;
  return `  ${usage} ${bits} ${range.padEnd(14)}${use}`.trimEnd();
}

function describedOrNot({ device, axes, buttons }: DeviceListing): string[] {
  if (axes.length + buttons > 0) return [];
  return [
    device.descriptor === null
      ? '  does not say what it has; `ebbline rig setup` finds its pedals by moving them'
      : '  has no axes and no buttons',
  ];
}
