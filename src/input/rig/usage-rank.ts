import type { ReportField } from '../hid/report-field.ts';
import type { AxisRole } from './rig.ts';

const GENERIC_DESKTOP = 0x01;
const SIMULATION = 0x02;

const [X, Y, Z, RX, RY, RZ, SLIDER, WHEEL] = [0x30, 0x31, 0x32, 0x33, 0x34, 0x35, 0x36, 0x38];
const [THROTTLE, TOE_BRAKE] = [0xbb, 0xbf];
const [ACCELERATOR, BRAKE, CLUTCH, STEERING] = [0xc4, 0xc5, 0xc6, 0xc8];
const [FRONT_BRAKE, REAR_BRAKE] = [0xcf, 0xd0];

/**
 * Usages that a role is likely to have, the likeliest first. Numbers from the HID Usage Tables; that pedals come as Y,
 * Z, Rz and Slider, and in which order, is common practice, no source.
 */
const LIKELY: Readonly<Record<AxisRole, readonly (readonly [page: number, id: number])[]>> = {
  brake: [
    ...onPage(SIMULATION, [BRAKE, REAR_BRAKE, FRONT_BRAKE, TOE_BRAKE]),
    ...onPage(GENERIC_DESKTOP, [RZ, Z, Y, SLIDER]),
  ],
  steering: [...onPage(SIMULATION, [STEERING]), ...onPage(GENERIC_DESKTOP, [X, WHEEL])],
  throttle: [
    ...onPage(SIMULATION, [ACCELERATOR, THROTTLE]),
    ...onPage(GENERIC_DESKTOP, [Y, Z, RZ, SLIDER]),
  ],
  clutch: [...onPage(SIMULATION, [CLUTCH]), ...onPage(GENERIC_DESKTOP, [SLIDER, RX, RY, Z, RZ])],
};

function onPage(page: number, ids: readonly number[]): (readonly [number, number])[] {
  return ids.map((id) => [page, id]);
}

/** How likely a field has a role, 0 is likeliest; null where its usage does not suggest the role. */
export function usageRank(
  role: AxisRole,
  { usagePage, usageId }: Pick<ReportField, 'usagePage' | 'usageId'>,
): number | null {
  const rank = LIKELY[role].findIndex(([page, id]) => page === usagePage && id === usageId);
  return rank < 0 ? null : rank;
}
