import type { RigDevice } from '../../rig-device.ts';
import { axisMap } from '../axis-map.ts';
import type { AxisAssignment } from '../rig.ts';
import { sameDevice } from '../same-device.ts';
import type { ReportTape } from './report-tape.ts';

const WIDTH = 40;

/**
 * A line that shows an axis as it is now, for redrawing.
 * @throws Problem where the calibration cannot be used.
 */
export function liveAxis(
  tape: ReportTape,
  devices: readonly RigDevice[],
  axis: AxisAssignment,
  wheelLockDeg: number | null,
): () => string {
  const map = axisMap(axis, wheelLockDeg);
  const device = devices.findIndex(({ identity }) => sameDevice(identity, axis.device));
  return () => {
    const counts = tape.latest(device, axis.field);
    if (counts === null) return `${axis.role} waiting for first movement`;
    const value = map(counts);
    return axis.role === 'steering'
      ? `${axis.role} ${wheelBar((2 * value) / (wheelLockDeg ?? 1))} ${value.toFixed(0)} deg`
      : `${axis.role} ${pedalBar(value)} ${(100 * value).toFixed(1)} %`;
  };
}

function pedalBar(level: number): string {
  return `[${'='.repeat(Math.round(level * WIDTH)).padEnd(WIDTH, '.')}]`;
}

/** @param share of the way to a stop, left positive */
function wheelBar(share: number): string {
  const place = Math.round(((1 - share) / 2) * WIDTH);
  return `[${'o'.padStart(place + 1, '.').padEnd(WIDTH + 1, '.')}]`;
}
