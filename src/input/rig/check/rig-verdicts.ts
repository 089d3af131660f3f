import { axisVerdicts } from './axis-verdicts.ts';
import { deviceVerdicts } from './device-verdicts.ts';
import type { RigReading } from './rig-monitor.ts';
import { byLimits, type Verdict } from './verdict.ts';

/** Judges a watched rig: every device, every axis of it, and whether the computer kept up. */
export function rigVerdicts({ devices, dropped }: RigReading): readonly Verdict[] {
  const judged = devices.flatMap((device) => [
    ...deviceVerdicts(device).map(([check, verdict]) => ({
      device: device.name,
      role: null,
      check,
      ...verdict,
    })),
    ...device.axes.flatMap((axis) =>
      axisVerdicts(axis).map(([check, verdict]) => ({
        device: device.name,
        role: axis.role,
        check,
        ...verdict,
      })),
    ),
  ]);
  const drops = byLimits(
    dropped,
    [0, 0],
    dropped === 0 ? 'none' : `${dropped} reports`,
    'The computer did not keep up: close what else is busy on it.',
  );
  return [...judged, { device: 'all devices', role: null, check: 'drops', ...drops }];
}
