import type { AxisReading } from './axis-monitor.ts';
import type { MonitoredDevice, RigReading } from './rig-monitor.ts';
import { rigVerdicts } from './rig-verdicts.ts';

/** The answer of `rig check --json`. */
export function readingJson(reading: RigReading): object {
  const { elapsedS, dropped, devices } = reading;
  return {
    elapsed_s: elapsedS,
    dropped_reports: dropped,
    devices: devices.map(deviceJson),
    verdicts: rigVerdicts(reading).map((verdict) => ({ ...verdict })),
  };
}

function deviceJson(device: MonitoredDevice): object {
  return {
    name: device.name,
    connected: device.connected,
    waiting_for_movement: device.waitingForMovement,
    streams_at_rest: device.streamsAtRest,
    reports: device.reports,
    rate_hz: device.rateHz,
    unique_rate_hz: device.uniqueRateHz,
    p99_gap_ms: device.p99GapMs,
    jitter_ms: device.jitterMs,
    gaps: device.gaps,
    axes: device.axes.map(axisJson),
  };
}

function axisJson(axis: AxisReading): object {
  const isWheel = axis.role === 'steering';
  return {
    role: axis.role,
    counts: axis.counts,
    level: isWheel ? null : axis.value,
    angle_deg: isWheel ? axis.value : null,
    min_counts: axis.minCounts,
    max_counts: axis.maxCounts,
    rest_span_counts: axis.restSpanCounts,
    rest_noise_counts: axis.restNoiseCounts,
    step_counts: axis.stepCounts,
    level_per_count: isWheel ? null : axis.perCount,
    deg_per_count: isWheel ? axis.perCount : null,
    at_full_s: axis.atFullS,
    beyond_full_counts: axis.beyondFullCounts,
    at_limit_s: axis.atLimitS,
    off_rest_counts: axis.offRestCounts,
    drift_counts: axis.driftCounts,
    newtons_per_count: axis.newtonsPerCount,
    measured_every_ms: axis.newsMs,
  };
}
