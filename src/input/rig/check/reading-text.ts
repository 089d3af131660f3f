import type { AxisReading } from './axis-monitor.ts';
import type { MonitoredDevice, RigReading } from './rig-monitor.ts';

/** Longer than this at full or at the sensor's end is more than the moment of the hit. */
const HELD_S = 0.05;

/** Everything about a watched rig as lines; the last line ends in a line end. */
export function readingText({ devices, dropped }: RigReading): string {
  const lines = devices.flatMap((device) => [
    deviceLine(device),
    ...device.axes.flatMap(axisLines),
  ]);
  return [...lines, dropped === 0 ? 'no report dropped' : `${dropped} reports dropped`, ''].join(
    '\n',
  );
}

/** The moment as one line, for redrawing. */
export function liveLine({ devices, dropped }: RigReading): string {
  const axes = devices.flatMap((device) => device.axes.map(axisNow));
  const rates = devices.map(({ name, rateHz }) => `${name} ${rateText(rateHz)}`);
  return [...axes, ...rates, `${dropped} dropped`].join('  ');
}

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

function axisLines(axis: AxisReading): string[] {
  if (axis.counts === null) return [`  ${axis.role.padEnd(9)} waiting for first movement`];
  return [
    `  ${axisNow(axis).padEnd(18)} ${[
      `${axis.minCounts}..${axis.maxCounts} counts`,
      noiseText(axis),
      stepText(axis),
    ].join(', ')}`,
    ...warnings(axis).map((warning) => `    ${warning}`),
  ];
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

function warnings({
  atFullS,
  beyondFullCounts,
  atLimitS,
  stepCounts,
  role,
  perCount,
}: AxisReading): string[] {
  const coarse = role === 'brake' && stepCounts !== null && stepCounts * perCount > COARSE_LEVEL;
  return [
    ...(atLimitS > HELD_S
      ? [`at the end of its sensor for ${fixed(atLimitS, 1)} s: harder is not seen`]
      : []),
    ...(atFullS > HELD_S && beyondFullCounts > 0
      ? [
          `at 100 % for ${fixed(atFullS, 1)} s and up to ${counted(beyondFullCounts, 'count', 'counts')} beyond: set full scale higher with \`ebbline rig setup\``,
        ]
      : []),
    ...(coarse
      ? ['one step is wider than the corridor of 1.5 %: small errors cannot be seen']
      : []),
  ];
}

/** The narrowest corridor. */
const COARSE_LEVEL = 0.015;

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
