import type { AxisAssignment, AxisCalibration, ButtonAssignment, Rig } from '../rig/rig.ts';
import {
  LEFT_PADDLE,
  PEDAL_AXES,
  type PedalBits,
  pedalField,
  RIGHT_PADDLE,
  STEERING_FIELD,
  virtualPedals,
  virtualWheel,
  WHEEL_BUTTONS,
  wheelButtonField,
} from './virtual-devices.ts';

export const VIRTUAL_LOCK_DEG = 900;

/** Counts at rest and at full pressure: no sensor uses all of its range. */
export function pedalCounts(bits: PedalBits): { readonly rest: number; readonly full: number } {
  const largest = 2 ** bits - 1;
  return { rest: Math.round(0.02 * largest), full: Math.round(0.94 * largest) };
}

/** Straight ahead is 0 and the left stop the smallest count: steering axes grow to the right. */
export const LEFT_STOP_COUNTS = -32767;

/** The rig in front of the simulated driver: its devices, calibrated. */
export function virtualRig(bits: PedalBits = 16): Rig {
  return {
    axes: [...pedalAxes(bits), steeringAxis()],
    buttons: Array.from({ length: WHEEL_BUTTONS }, (_, button) => wheelButton(button)),
    wheelLockDeg: VIRTUAL_LOCK_DEG,
    foot: 'left',
    footwear: 'simulated',
  };
}

function pedalAxes(bits: PedalBits): readonly AxisAssignment[] {
  const device = virtualPedals(bits).identity;
  const { rest, full } = pedalCounts(bits);
  return PEDAL_AXES.map((role) => ({
    role,
    device,
    field: pedalField(role, bits),
    calibration: calibration(rest, full, role === 'brake' ? 'force' : 'travel'),
  }));
}

function steeringAxis(): AxisAssignment {
  return {
    role: 'steering',
    device: virtualWheel().identity,
    field: STEERING_FIELD,
    calibration: calibration(0, LEFT_STOP_COUNTS, 'travel'),
  };
}

function calibration(
  restCounts: number,
  fullCounts: number,
  sensor: AxisCalibration['sensor'],
): AxisCalibration {
  return { restCounts, fullCounts, deadStart: 0, deadEnd: 0, sensor, load: null };
}

function wheelButton(button: number): ButtonAssignment {
  const paddles: Readonly<Record<number, Pick<ButtonAssignment, 'control' | 'action'>>> = {
    [RIGHT_PADDLE]: { control: 'right paddle', action: 'upshift' },
    [LEFT_PADDLE]: { control: 'left paddle', action: 'downshift' },
  };
  return {
    device: virtualWheel().identity,
    field: wheelButtonField(button),
    pressedCounts: 1,
    control: `wheel button ${button + 1}`,
    action: null,
    ...paddles[button],
  };
}
