import { usageName } from '../../hid/usage-name.ts';
import type { RigDevice } from '../../rig-device.ts';
import { describedField, deviceFields } from '../device-fields.ts';
import type { AxisAssignment } from '../rig.ts';
import { identityText, sameDevice } from '../same-device.ts';

/** An assigned axis in words: `Brake of test pedals, 16 bits, rest 12, full 4010 counts`. */
export function axisText(axis: AxisAssignment, devices: readonly RigDevice[]): string {
  const { restCounts, fullCounts } = axis.calibration;
  return `${placeText(axis, devices)}, ${axis.field.bitSize} bits, rest ${restCounts}, full ${fullCounts} counts`;
}

/** Where an axis or a button is, by the name of its usage where the device tells it. */
export function placeText(
  { device, field }: Pick<AxisAssignment, 'device' | 'field'>,
  devices: readonly RigDevice[],
): string {
  const here = devices.find(({ identity }) => sameDevice(identity, device));
  if (here === undefined) return `${identityText(device)} (not connected)`;
  const described = describedField(deviceFields(here), field);
  const place =
    described === null
      ? `bit ${field.bitOffset}`
      : usageName(described.usagePage, described.usageId);
  return `${place} of ${here.name}`;
}
