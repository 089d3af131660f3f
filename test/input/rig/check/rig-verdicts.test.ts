import { describe, expect, test } from 'vitest';
import { RigMonitor } from '../../../../src/input/rig/check/rig-monitor.ts';
import { rigVerdicts } from '../../../../src/input/rig/check/rig-verdicts.ts';
import type { Verdict } from '../../../../src/input/rig/check/verdict.ts';
import type { Rig } from '../../../../src/input/rig/rig.ts';
import { NAMED_PEDALS } from '../../../reference/descriptors.ts';
import { seededRandom } from '../../hid/simulated-device.ts';
import { batchOf, deviceOf, identity, type Report, word } from '../../report-batches.ts';
import { calibration, WORD } from '../calibration.ts';

/** What a simulated brake does in a check of ten seconds: two at rest, six moved to the ends, two at rest. */
interface Pedal {
  readonly rateHz?: number;
  /** Largest lateness of a report, drawn evenly. */
  readonly lateMs?: number;
  /** Silences of 200 ms while the pedal rests at the end. */
  readonly gaps?: number;
  /** Reports that carry one measurement. */
  readonly repeats?: number;
  readonly onChangeOnly?: boolean;
  readonly noiseCounts?: number;
  /** The sensor is coarser than its field. */
  readonly stepCounts?: number;
  readonly rest?: number;
  /** Where it comes to rest at the end. */
  readonly endRest?: number;
  /** Counts at the hardest press. */
  readonly peak?: number;
  readonly dropped?: number;
  readonly newtonsPerCount?: number;
}

const REST = 1000;
const FULL = 9000;
/** Accelerator, brake, clutch as words of 0..10000. */
const PEDALS = deviceOf(1, 'pedals', NAMED_PEDALS);

function rigOf(newtonsPerCount: number | undefined): Rig {
  const load =
    newtonsPerCount === undefined
      ? null
      : { newtonsPerCount, zeroCounts: REST, loads: [], residualN: null };
  const brake = {
    role: 'brake' as const,
    device: identity(1),
    field: { ...WORD, bitOffset: 16 },
    calibration: calibration(REST, FULL, { load }),
  };
  return { axes: [brake], buttons: [], wheelLockDeg: null, foot: 'left', footwear: '' };
}

/** Slow and quick presses between 2.2 s and 7.5 s, with nothing held at the end of the travel. */
function shareAt(timeS: number): number {
  if (timeS < 2.2 || timeS > 7.5) return 0;
  return Math.abs(Math.sin(1.5 * (timeS - 2.2) ** 1.5)) ** 3;
}

function reportsOf(pedal: Pedal): readonly Report[] {
  const { rateHz = 1000, lateMs = 0, repeats = 1, noiseCounts = 0, stepCounts = 1 } = pedal;
  const { rest = REST, endRest = rest, peak = FULL - 100, gaps = 0 } = pedal;
  const random = seededRandom(20261127);
  const reports: Report[] = [];
  let counts = rest;
  for (let i = 0; i < 10 * rateHz; i++) {
    const timeS = i / rateHz;
    if (i % repeats === 0) {
      const base = timeS > 7.5 ? endRest : rest;
      const clean = base + (peak - base) * shareAt(timeS) + noiseCounts * (random() - 0.5);
      const measured = stepCounts * Math.round(clean / stepCounts);
      if (pedal.onChangeOnly && measured === counts) continue;
      counts = Math.min(10_000, measured);
    }
    const silent = Array.from({ length: gaps }, (_, n) => 8.1 + n / 2);
    if (silent.some((fromS) => timeS >= fromS && timeS < fromS + 0.2)) continue;
    const late = lateMs * random();
    reports.push([0, Math.round(1e6 * timeS + 1000 * late), [0, 0, ...word(counts), 0, 0]]);
  }
  return reports;
}

function verdictsOn(pedal: Pedal, lose = false): readonly Verdict[] {
  const rig = rigOf(pedal.newtonsPerCount);
  const monitor = new RigMonitor(rig, [PEDALS], { restS: 2, endS: 8 });
  monitor.batch(batchOf(0, []));
  const reports = reportsOf(pedal);
  for (let untilMs = 50; untilMs <= 10_000; untilMs += 50) {
    const own = reports.filter(([, us]) => us >= 1000 * (untilMs - 50) && us < 1000 * untilMs);
    monitor.batch(batchOf(1000 * untilMs - 1, own, pedal.dropped ?? 0));
  }
  if (lose) monitor.deviceEvent({ kind: 'lost', device: 0, atUs: 1e7, reason: 'unplugged' });
  return rigVerdicts(monitor.read());
}

const find = (verdicts: readonly Verdict[], check: Verdict['check']): Verdict | undefined =>
  verdicts.find((verdict) => verdict.check === check);

test('a quick, quiet, fine pedal is good in everything', () => {
  const verdicts = verdictsOn({ noiseCounts: 8 });
  expect(verdicts.filter(({ verdict }) => verdict !== 'good')).toEqual([]);
  expect(verdicts.map(({ check }) => check)).toEqual([
    ...['rate', 'jitter', 'gaps', 'reporting', 'repeats'],
    ...['movement', 'noise', 'resolution', 'sensor end', 'full scale', 'rest', 'drift'],
    'drops',
  ]);
  expect(verdicts.filter(({ fix }) => fix !== null)).toEqual([]);
});

/** Levels: full scale is 8000 counts, so that the limits of 0.5 and 1.5 % are 40 and 120 counts. */
const cases: readonly (readonly [
  name: string,
  pedal: Pedal,
  check: Verdict['check'],
  verdict: Verdict['verdict'],
  found: RegExp,
])[] = [
  ['200 reports a second', { rateHz: 200 }, 'rate', 'good', /^200 reports/],
  ['125 reports a second', { rateHz: 125 }, 'rate', 'limited', /^125 reports/],
  ['60 reports a second', { rateHz: 60 }, 'rate', 'bad', /^60 reports/],
  // Two even delays of up to 2 ms apart: sqrt(2 / 12) * 2 = 0.82 ms.
  ['reports up to 2 ms late', { rateHz: 200, lateMs: 2 }, 'jitter', 'good', /^0\.8/],
  ['reports up to 4.5 ms late', { rateHz: 200, lateMs: 4.5 }, 'jitter', 'limited', /^1\.[89]/],
  ['reports up to 15 ms late', { rateHz: 60, lateMs: 15 }, 'jitter', 'bad', /^6\./],
  ['a silence in a stream', { gaps: 1 }, 'gaps', 'limited', /^1 over 50 ms/],
  ['silences in a stream', { gaps: 3 }, 'gaps', 'bad', /^3 over 50 ms/],
  ['reports on change', { onChangeOnly: true }, 'reporting', 'limited', /only while something/],
  ['silence of such a device', { onChangeOnly: true }, 'gaps', 'good', /silence is rest/],
  ['every value twice', { repeats: 2 }, 'repeats', 'limited', /comes 2 times: 500/],
  ['every value eight times', { repeats: 8 }, 'repeats', 'bad', /comes 8 times: 125/],
  [
    'a pedal that stays',
    { peak: REST + 20 },
    'movement',
    'bad',
    /stuck, or not pressed: 1000 to 1020/,
  ],
  ['noise of 0.4 %', { noiseCounts: 30 }, 'noise', 'good', /^(29|30) counts \(0\.3[68]/],
  ['noise of 1 %', { noiseCounts: 80 }, 'noise', 'limited', /^(79|80) counts/],
  ['noise of 2.5 %', { noiseCounts: 200 }, 'noise', 'bad', /^(19\d|200) counts/],
  ['steps of 0.4 %', { stepCounts: 32 }, 'resolution', 'good', /^a step is 32 counts \(0\.40 %/],
  ['steps of 1 %', { stepCounts: 80 }, 'resolution', 'limited', /^a step is 80 counts/],
  ['steps of 2 %', { stepCounts: 160 }, 'resolution', 'bad', /^a step is 160 counts/],
  [
    'steps in newtons',
    { stepCounts: 32, newtonsPerCount: 0.1 },
    'resolution',
    'good',
    /32 counts \(0\.40 %, 3\.2 N\)/,
  ],
  ['a saturated sensor', { peak: 13_000 }, 'sensor end', 'bad', /harder is not seen/],
  ['full scale exceeded', { peak: 9800 }, 'full scale', 'limited', /s at 100 %, 800 counts/],
  ['a rest moved by 1 %', { rest: REST + 80 }, 'rest', 'limited', /^80 counts \(1\.00 %\)/],
  ['a rest moved by 3 %', { rest: REST - 240 }, 'rest', 'bad', /^-240 counts/],
  ['1 % of drift', { endRest: REST + 80 }, 'drift', 'limited', /^80 counts \(1\.00 %\)/],
  ['a pedal that sticks at 5 %', { endRest: REST + 400 }, 'drift', 'bad', /^400 counts/],
  ['drift of a silent device', { onChangeOnly: true }, 'drift', 'unknown', /nothing heard/],
  ['lost reports', { dropped: 4 }, 'drops', 'bad', /^4 reports/],
];

describe('verdicts', () => {
  test.each(cases)('on %s', (_, pedal, check, verdict, found) => {
    const one = find(verdictsOn(pedal), check);
    expect(one).toMatchObject({ verdict, found: expect.stringMatching(found) });
    if (verdict === 'good') expect(one?.fix).toBeNull();
    else expect(one?.fix).toMatch(/\w{3}/);
  });

  test('on a device that went away', () => {
    expect(verdictsOn({}, true)[0]).toMatchObject({ check: 'connection', verdict: 'bad' });
  });

  test('on a device that never spoke are unknown, never good', () => {
    const monitor = new RigMonitor(rigOf(undefined), [PEDALS], { restS: 2, endS: 8 });
    const verdicts = rigVerdicts(monitor.read());
    expect(verdicts.map(({ check, verdict }) => [check, verdict])).toEqual([
      ['rate', 'unknown'],
      ['movement', 'unknown'],
      ['drops', 'good'],
    ]);
  });

  test('on a wheel are in degrees, and say nothing of full scale or of rest', () => {
    const rig = rigOf(undefined);
    const wheel = { ...rig.axes[0]!, role: 'steering' as const };
    const monitor = new RigMonitor({ ...rig, axes: [wheel], wheelLockDeg: 800 }, [PEDALS], {
      restS: 2,
      endS: 8,
    });
    monitor.batch(batchOf(0, []));
    monitor.batch(batchOf(1e7, reportsOf({ noiseCounts: 30 })));
    const verdicts = rigVerdicts(monitor.read()).filter(({ role }) => role !== null);
    expect(verdicts.map(({ check }) => check)).toEqual(['movement', 'noise', 'resolution']);
    // 400 degrees over 8000 counts: 30 counts are 1.5 degrees.
    expect(verdicts[1]).toMatchObject({
      verdict: 'limited',
      found: expect.stringContaining('deg'),
    });
  });
});
