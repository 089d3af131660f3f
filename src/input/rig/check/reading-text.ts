import type { AxisReading } from './axis-monitor.ts';
import type { MonitoredDevice, RigReading } from './rig-monitor.ts';
import { rigVerdicts } from './rig-verdicts.ts';
import { verdictLines } from './verdict-lines.ts';

/** Everything about a watched rig as lines, then its verdicts with what to do; the last line ends in a line end. */
export function readingText(reading: RigReading): string {
  const lines = reading.devices.flatMap((device) => [
    deviceLine(device),
    ...device.axes.map(axisLine),
  ]);
  return [...lines, '', ...verdictLines(rigVerdicts(reading)), ''].join('\n');
}

/** The moment as one line, for redrawing. */
export function liveLine({ devices, dropped, phase }: RigReading): string {
  const axes = devices.flatMap((device) => device.axes.map(axisNow));
  const rates = devices.map(({ name, rateHz }) => `${name} ${rateText(rateHz)}`);
  return [PHASE_WORDS[phase], ...axes, ...rates, `${dropped} dropped`].join('  ');
}

const PHASE_WORDS: Readonly<Record<RigReading['phase'], string>> = {
  rest: 'TOUCH NOTHING',
  move: 'MOVE EVERYTHING',
  end: 'LET GO',
};

function deviceLine(device: MonitoredDevice): string {
  if (!device.connected) return `${device.name}: not connected`;
  if (device.waitingForMovement) return `${device.name}: waiting for first movement`;
  const { rateHz, uniqueRateHz, p99GapMs, jitterMs, gaps, streamsAtRest } = device;
  if (rateHz === null) return `${device.name}: ${device.reports} reports, too few for a rate`;
  return `${device.name}: ${[
    `${rateText(rateHz)} ${streamsAtRest ? 'all the time' : 'while moving'}`,
    `${rateText(uniqueRateHz)} with news`,
    `99 of 100 within ${fixed(p99GapMs, 2)} ms`,
    `jitter ${fixed(jitterMs, 2)} ms`,
    streamsAtRest ? counted(gaps, 'gap', 'gaps') : 'silent at rest',
  ].join(', ')}`;
}

function axisLine(axis: AxisReading): string {
  if (axis.counts === null) return `  ${axis.role.padEnd(9)} waiting for first movement`;
  return `  ${axisNow(axis).padEnd(18)} ${[
    `${axis.minCounts}..${axis.maxCounts} counts`,
    noiseText(axis),
    stepText(axis),
  ].join(', ')}`;
}

function axisNow({ role, value }: AxisReading): string {
  return `${role.padEnd(9)}${value === null ? 'unknown' : valueText(role, value)}`;
}

function noiseText({ role, restSpanCounts, perCount }: AxisReading): string {
  if (restSpanCounts === null) return 'silent at rest';
  return `noise at rest ${counted(restSpanCounts, 'count', 'counts')} (${valueText(role, restSpanCounts * perCount)})`;
}

function stepText({ role, stepCounts, perCount }: AxisReading): string {
  if (stepCounts === null) return 'never moved';
  return `step ${counted(stepCounts, 'count', 'counts')} (${valueText(role, stepCounts * perCount, 2)})`;
}

function valueText(role: AxisReading['role'], value: number, digits = 1): string {
  return role === 'steering' ? `${fixed(value, digits)} deg` : `${fixed(100 * value, digits)} %`;
}

function rateText(rateHz: number | null): string {
  return rateHz === null ? 'silent' : `${Math.round(rateHz)}/s`;
}

function counted(count: number, one: string, many: string): string {
  return `${count} ${count === 1 ? one : many}`;
}

function fixed(value: number | null, digits: number): string {
  return (value ?? 0).toFixed(digits);
}
