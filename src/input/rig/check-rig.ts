import { Problem } from '../../problem.ts';
import type { RigDevice } from '../rig-device.ts';
import type { AxisAssignment, Rig } from './rig.ts';
import { identityText, sameDevice } from './same-device.ts';

/**
 * Refuses a rig that cannot be driven with these devices.
 * @throws Problem where no brake is assigned, its device is not connected, or a role is given twice.
 */
export function checkRig(rig: Rig, devices: readonly RigDevice[]): void {
  const brake = rig.axes.find(({ role }) => role === 'brake');
  if (brake === undefined)
    throw new Problem('no brake pedal is assigned', {
      where: 'rig',
      next: 'Run `ebbline rig setup` and press the brake when asked.',
    });
  refuseDoubles(rig.axes);
  if (!devices.some(({ identity }) => sameDevice(identity, brake.device)))
    throw new Problem("the brake's device is not connected", {
      where: identityText(brake.device),
      next: 'Plug it in, or run `ebbline rig setup` for the pedals that are connected.',
    });
}

function refuseDoubles(axes: readonly AxisAssignment[]): void {
  const roles = axes.map(({ role }) => role);
  const twice = roles.find((role, i) => roles.indexOf(role) !== i);
  if (twice === undefined) return;
  throw new Problem(`two axes are assigned to the ${twice}`, {
    where: 'rig',
    next: 'Run `ebbline rig setup` and assign it once.',
  });
}
