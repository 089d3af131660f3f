import type { MonitoredDevice } from './rig-monitor.ts';
import { byLimits, type CheckName, good, type Judged, unknown } from './verdict.ts';

/**
 * Milliseconds between reports. A release is timed to hundredths of a second: 5 ms leave that whole, 10 ms half.
 * Common practice, no source.
 */
const INTERVAL_MS = [5.05, 10.1] as const;
/** Scatter of the intervals, in milliseconds: beyond one, what a foot does quickly is smeared. */
const JITTER_MS = [1, 4] as const;
const GAPS = [0, 1] as const;
/** Reports per measurement from which a device sends every value more than once. */
const REPEATED = [1.5, 4] as const;

const CABLE =
  'Try another cable and another socket, without a hub, and switch USB power saving off.';

/** Judges how one device reports. */
export function deviceVerdicts(device: MonitoredDevice): readonly (readonly [CheckName, Judged])[] {
  if (!device.connected) {
    const fix = 'Plug it in again and look at its cable.';
    return [['connection', { verdict: 'bad', found: 'it went away', fix }]];
  }
  if (device.rateHz === null) {
    const found = device.waitingForMovement ? 'no report yet' : 'too few reports to tell';
    return [['rate', unknown(found, 'Move something on it while the check runs.')]];
  }
  return [
    ['rate', rate(device.rateHz)],
    ['jitter', jitter(device)],
    ['gaps', gaps(device)],
    ['reporting', reporting(device)],
    ...repeats(device, device.rateHz),
  ];
}

function rate(rateHz: number): Judged {
  return byLimits(
    1000 / rateHz,
    INTERVAL_MS,
    `${Math.round(rateHz)} reports a second`,
    "Plug it straight into the computer, and choose a higher rate where the maker's own tool offers one: 200 a second or more.",
  );
}

function jitter({ jitterMs, p99GapMs }: MonitoredDevice): Judged {
  const [scatter, late] = [jitterMs ?? 0, p99GapMs ?? 0];
  return byLimits(
    scatter,
    JITTER_MS,
    `${scatter.toFixed(2)} ms, 99 of 100 within ${late.toFixed(2)} ms`,
    'Close what else is busy on this computer; a virtual machine or a hub in between adds jitter, too.',
  );
}

function gaps({ gaps: count, streamsAtRest }: MonitoredDevice): Judged {
  if (!streamsAtRest) return good('none to tell: silence is rest');
  const found = count === 0 ? 'none over 50 ms' : `${count} over 50 ms`;
  return byLimits(count, GAPS, found, CABLE);
}

function reporting({ streamsAtRest }: MonitoredDevice): Judged {
  if (streamsAtRest) return good('all the time');
  return {
    verdict: 'limited',
    found: 'only while something changes: silence cannot be told from a loose cable',
    fix: "Nothing has to be done; where the maker's own tool offers it, let the device report all the time.",
  };
}

/** The best measured axis speaks for the device. */
function repeats({ axes }: MonitoredDevice, rateHz: number): [CheckName, Judged][] {
  const best = Math.min(...axes.flatMap(({ newsMs }) => newsMs ?? []));
  if (!Number.isFinite(best)) return [];
  const perValue = (best * rateHz) / 1000;
  const found =
    perValue <= REPEATED[0]
      ? 'every report can be a new value'
      : `each value comes ${Math.round(perValue)} times: ${Math.round(1000 / best)} measurements a second`;
  const fix =
    "The rate is that of the reports, not of the sensor: switch filters and smoothing off in the maker's own tool.";
  return [['repeats', byLimits(perValue, REPEATED, found, fix)]];
}
