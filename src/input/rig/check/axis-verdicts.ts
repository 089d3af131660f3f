import type { AxisReading } from './axis-monitor.ts';
import { byLimits, type CheckName, good, type Judged, unknown } from './verdict.ts';

/**
 * Shares of full scale for noise, step, rest and drift. The narrowest corridor is 1.5 %: a third of it does not matter,
 * more than all of it hides the error that is to be seen.
 */
const LEVEL = [0.005, 0.015] as const;
/** The same for a wheel, in degrees. Common practice, no source. */
const WHEEL_DEG = [0.5, 2] as const;
/** Longer than this at the end of the sensor or beyond full scale is more than the moment of the hit. */
const HELD_S = 0.05;
/** Less movement than this share of full scale, or so many degrees, was none. */
const MOVED_LEVEL = 0.1;
const MOVED_DEG = 10;

const TOUCHED = 'If it was touched meanwhile, check again.';

/** Judges one axis of the rig. */
export function axisVerdicts(axis: AxisReading): readonly (readonly [CheckName, Judged])[] {
  if (axis.counts === null) {
    const fix = 'Move it. If it stays silent, look at its cable, then run `ebbline rig setup`.';
    return [['movement', unknown('not heard of', fix)]];
  }
  return [
    ['movement', movement(axis)],
    ['noise', noise(axis)],
    ['resolution', resolution(axis)],
    ...(axis.role === 'steering'
      ? []
      : ([
          ['sensor end', sensorEnd(axis)],
          ['full scale', fullScale(axis)],
          ['rest', rest(axis)],
          ['drift', drift(axis)],
        ] as const)),
  ];
}

function movement(axis: AxisReading): Judged {
  const span = ((axis.maxCounts ?? 0) - (axis.minCounts ?? 0)) * axis.perCount;
  const found = `${axis.minCounts} to ${axis.maxCounts} counts`;
  if (span >= (isWheel(axis) ? MOVED_DEG : MOVED_LEVEL)) return good(found);
  return {
    verdict: 'bad',
    found: `stuck, or not pressed: ${found}`,
    fix: 'Move it to both ends and check again. If it stays, look at linkage and cable, then run `ebbline rig setup`.',
  };
}

function noise(axis: AxisReading): Judged {
  const { restSpanCounts, restNoiseCounts } = axis;
  if (restSpanCounts === null) return good('silent at rest');
  const deviation = (restNoiseCounts ?? 0).toFixed(1);
  return byLimits(
    restSpanCounts * axis.perCount,
    isWheel(axis) ? WHEEL_DEG : LEVEL,
    `${sizeText(axis, restSpanCounts)} at rest, deviation ${deviation}`,
    `${TOUCHED} Else keep its cable away from motors and power supplies, and ground the rig.`,
  );
}

function resolution(axis: AxisReading): Judged {
  const { stepCounts } = axis;
  if (stepCounts === null) return unknown('no step seen', 'Move it slowly while the check runs.');
  return byLimits(
    stepCounts * axis.perCount,
    isWheel(axis) ? WHEEL_DEG : LEVEL,
    `a step is ${sizeText(axis, stepCounts)}`,
    'Small errors cannot be seen: use more of the sensor, with its gain or a higher full scale, or a sensor with more bits.',
  );
}

function sensorEnd({ atLimitS }: AxisReading): Judged {
  if (atLimitS <= HELD_S) return good('not reached');
  return {
    verdict: 'bad',
    found: `at its end for ${atLimitS.toFixed(1)} s: harder is not seen`,
    fix: "Lower its gain where the maker's own tool offers that, then run `ebbline rig setup`; or press less for 100 %.",
  };
}

function fullScale(axis: AxisReading): Judged {
  const { atFullS, beyondFullCounts } = axis;
  if (atFullS <= HELD_S || beyondFullCounts === 0) return good('not exceeded');
  return {
    verdict: 'limited',
    found: `${atFullS.toFixed(1)} s at 100 %, ${sizeText(axis, beyondFullCounts)} beyond`,
    fix: 'Set full scale higher with `ebbline rig setup`.',
  };
}

function rest(axis: AxisReading): Judged {
  const off = axis.offRestCounts;
  if (off === null) return good('silent at rest');
  return byLimits(
    Math.abs(off) * axis.perCount,
    LEVEL,
    `${sizeText(axis, Math.round(off))} from where it was set up`,
    `${TOUCHED} Else let it warm up for ten minutes and run \`ebbline rig setup\`: it has moved since.`,
  );
}

function drift(axis: AxisReading): Judged {
  const { driftCounts } = axis;
  if (driftCounts === null)
    return unknown('nothing heard at rest', 'A device that reports on change tells no drift.');
  return byLimits(
    Math.abs(driftCounts) * axis.perCount,
    LEVEL,
    `${sizeText(axis, Math.round(driftCounts))} from the start to the end`,
    `${TOUCHED} A pedal that does not come back sticks: look at its spring. A sensor that warms up settles: \`ebbline rig check --seconds 600\` shows it; set it up when it is warm.`,
  );
}

function isWheel({ role }: AxisReading): boolean {
  return role === 'steering';
}

/** Counts with what they stand for: `12 counts (0.15 %, 1.2 N)`. */
function sizeText(axis: AxisReading, counts: number): string {
  const meant = isWheel(axis)
    ? `${(counts * axis.perCount).toFixed(2)} deg`
    : `${(100 * counts * axis.perCount).toFixed(2)} %`;
  const force =
    axis.newtonsPerCount === null ? '' : `, ${(counts * axis.newtonsPerCount).toFixed(1)} N`;
  return `${counts} ${Math.abs(counts) === 1 ? 'count' : 'counts'} (${meant}${force})`;
}
