import { PLAIN_DISPLAY } from '../../src/drill/display/display-settings.ts';
import type {
  BlockSummary,
  DrillView,
  RepLine,
  TargetSummary,
} from '../../src/drill/drill-view.ts';
import type { RepScore } from '../../src/score/rep-score.ts';
import type { Curve, Target } from '../../src/target/target.ts';
import type { Track } from '../../src/trace/track.ts';
import { sampleDiagnosis } from './sample-block.ts';

type Knot = readonly [number, number];

function polyline(knots: readonly Knot[]): Curve {
  const at = (x: number): number => {
    const next = knots.findIndex(([knot]) => knot >= x);
    if (next === 0) return knots[0]![1];
    if (next < 0) return knots.at(-1)![1];
    const [x0, y0] = knots[next - 1]!;
    const [x1, y1] = knots[next]!;
    return y0 + ((x - x0) / (x1 - x0)) * (y1 - y0);
  };
  return { start: knots[0]![0], end: knots.at(-1)![0], at };
}

const LEVEL: readonly Knot[] = [
  [0, 0],
  [0.18, 0.8],
  [0.7, 0.8],
  [1.1, 0.62],
  [1.7, 0.3],
  [2.3, 0.08],
  [2.6, 0],
];

/** An invented hairpin; its peak is 80 %, so full scale of the picture is 88 %. */
export const HAIRPIN: Target = {
  id: 'hairpin',
  version: 'sample',
  name: 'Kiln hairpin',
  cornerType: 'hairpin',
  domain: 'time',
  speeds: null,
  level: polyline(LEVEL),
  steering: null,
  gears: [],
  marks: {
    rise: 0,
    peak: 0.18,
    startOfRelease: 0.7,
    turnIn: 1.2,
    apex: 2.45,
    finalRelease: 2.3,
    brakeOff: 2.6,
  },
  peakLevel: 0.8,
  corridorAt: (x) => Math.max(0.015, 0.05 * polyline(LEVEL).at(x)),
  fullScale: { pedalForceN: null, pressureBar: null },
  advice: null,
  learnedFrom: null,
};

/** A trace that leaves the plateau late and re-applies once, at 200 samples a second, up to `untilS`. */
export function ownTrace(untilS: number): Track {
  const late = polyline([
    [0, 0],
    [0.22, 0.74],
    [0.85, 0.77],
    [1.6, 0.3],
    [1.75, 0.36],
    [2.2, 0.1],
    [2.5, 0],
  ]);
  const timeS = Float64Array.from(
    { length: Math.floor((untilS + 0.3) * 200) },
    (_, index) => index / 200 - 0.3,
  );
  return { timeS, value: timeS.map((time) => late.at(time)) };
}

const NO_SIDE: RepScore['side'] = {
  startErrorS: null,
  liftToHitS: null,
  overlapS: null,
  restingLevel: 0,
  shiftRippleLevel: null,
  steeringLagS: null,
};

export function scored(
  score: number,
  parts: RepScore['parts'],
  reapplications: number,
  cause: RepScore['cause'] = null,
): RepScore {
  return {
    kind: 'scored',
    version: 1,
    score,
    parts,
    pointsLost: { release: 0, hit: 0, smooth: 0 },
    releaseErrorLevel: 0.04,
    averageErrorLevel: 0.01,
    onOffErrorLevel: 0.3,
    inCorridor: 0.6,
    peakError: 0,
    riseErrorS: 0,
    reapplications,
    reapplied: 0,
    rateRatio: 1,
    smoothnessDifference: null,
    keyPoints: {
      onsetS: 0,
      peakS: 0.2,
      peakLevel: 0.8,
      nearPeakS: 0.18,
      startOfReleaseS: 0.8,
      halfReleaseS: 1.6,
      finalReleaseS: 2.3,
      brakeOffS: 2.6,
    },
    keyPointErrorsS: { startOfRelease: 0, halfRelease: 0, finalRelease: 0, brakeOff: 0 },
    cause,
    side: NO_SIDE,
    live: null,
    flags: [],
  };
}

const line = (number: number, rest: Partial<RepLine>): RepLine => ({
  number,
  targetName: null,
  warning: null,
  feedback: 'shown',
  outcome: null,
  voided: null,
  call: null,
  sentence: '',
  glance: [],
  ...rest,
});

export const REPS: readonly RepLine[] = [
  line(5, {
    outcome: scored(71.4, { release: 0.62, hit: 0.94, smooth: 0.88 }, 1),
    sentence: '20 % too quick off the brake',
    glance: ['eased', 'quick'],
  }),
  line(4, { feedback: 'hidden' }),
  line(3, { voided: 'aborted' }),
  line(2, { outcome: scored(93, { release: 0.92, hit: 0.96, smooth: 0.93 }, 0) }),
  line(1, {
    outcome: {
      kind: 'no-rep',
      version: 1,
      score: 0,
      reason: 'never braked',
      side: null,
      flags: [],
    },
  }),
];

export const SUMMARY: BlockSummary = {
  reps: 10,
  aborted: 1,
  medianScore: 74.2,
  medianReleaseErrorLevel: 0.0423,
  averageErrorLevel: 0.0118,
  spreadLevel: 0.0291,
  cause: { kind: 'rate', timingS: 0, rateRatio: 0.8, amountRatio: 1, explained: 0.7 },
  causeReps: 6,
  troubles: [
    {
      part: 'release',
      words: '20 % too quick off the brake',
      change: 'take 250 ms more over the release',
      reps: 6,
      of: 10,
    },
  ],
  sentence: 'Let the pedal rise more slowly from the start of release to turn-in.',
  diagnosis: sampleDiagnosis(HAIRPIN, scored(74, { release: 0.62, hit: 0.94, smooth: 0.88 }, 0)),
};

/** A shown rep in the middle of the release; tests change what they are about. */
export const BRAKING: DrillView = {
  targetName: 'Kiln hairpin',
  cornerType: 'hairpin',
  rep: 6,
  reps: 10,
  done: 5,
  feedback: 'shown',
  phase: 'braking',
  atS: 100,
  toCueS: null,
  paced: false,
  nowS: 1.9,
  target: HAIRPIN,
  own: ownTrace(1.9),
  ownSteering: null,
  brakeLevel: 0.27,
  throttleLevel: 0,
  clutchLevel: null,
  steeringDeg: 41,
  gear: 2,
  liveErrorLevel: 0.043,
  restS: null,
  lastReps: REPS,
  rating: null,
  buttons: [],
  display: PLAIN_DISPLAY,
  menuRow: null,
  note: null,
  result: null,
  summary: null,
  health: [
    { name: 'Load cell pedals', rateHz: 998.4, connected: true, waitingForMovement: false },
    { name: 'Wheel base', rateHz: 500, connected: true, waitingForMovement: false },
  ],
  dropped: 0,
  message: null,
  pictures: null,
  live: null,
  plan: null,
};

/** Eight corners of a lap, the last with an aborted rep. */
export const LAP_SUMMARIES: readonly TargetSummary[] = [
  'Kiln hairpin',
  'Coil bend',
  'Heron sweep',
  "Weaver's corner",
  'Drovers bowl',
  'Ferry chicane',
  'Beacon rise',
  'Lantern gate',
].map((corner, i) => ({
  targetName: `${corner}, qualifying`,
  summary: {
    ...SUMMARY,
    reps: i === 7 ? 2 : 3,
    aborted: i === 7 ? 1 : 0,
    medianScore: i === 6 ? null : 60 + 4 * i,
    medianReleaseErrorLevel: i === 6 ? null : 0.06 - 0.005 * i,
    cause: i % 3 === 0 ? SUMMARY.cause : null,
    causeReps: 3,
    troubles: i % 3 === 0 ? [{ ...SUMMARY.troubles[0]!, reps: 3, of: 3 }] : [],
  },
}));

/** One view for each thing that the drill can show, by the name of its golden file. */
export const DRILL_VIEWS: Readonly<Record<string, DrillView>> = {
  arming: { ...BRAKING, phase: 'arming', nowS: 0, own: null, brakeLevel: 0.04 },
  countdown: { ...BRAKING, phase: 'countdown', toCueS: 2.3, nowS: 0, own: null },
  cue: { ...BRAKING, phase: 'cue', nowS: 0, own: null, brakeLevel: 0, liveErrorLevel: null },
  'braking-shown': BRAKING,
  'braking-hidden': { ...BRAKING, feedback: 'hidden', own: null, liveErrorLevel: null },
  'braking-first-of-day': {
    ...BRAKING,
    feedback: 'first-of-day',
    target: null,
    own: null,
    liveErrorLevel: null,
  },
  hold: { ...BRAKING, phase: 'result', nowS: 2.6, own: ownTrace(2.6), brakeLevel: 0 },
  rating: {
    ...BRAKING,
    phase: 'result',
    nowS: 2.6,
    own: ownTrace(2.6),
    brakeLevel: 0,
    rating: { timing: 'late', amount: null },
  },
  result: {
    ...BRAKING,
    phase: 'result',
    nowS: 2.6,
    own: ownTrace(2.6),
    brakeLevel: 0,
    result: { ...REPS[0]!, number: 6 },
  },
  rest: { ...BRAKING, phase: 'rest', restS: 3.4, nowS: 2.6, own: ownTrace(2.6), brakeLevel: 0 },
  paused: { ...BRAKING, phase: 'paused', own: null, nowS: 0, brakeLevel: 0 },
  'device-lost': {
    ...BRAKING,
    phase: 'device-lost',
    own: null,
    health: [{ ...BRAKING.health[0]!, connected: false }, BRAKING.health[1]!],
    dropped: 12,
  },
  'long-message': {
    ...BRAKING,
    phase: 'device-lost',
    own: null,
    message:
      'Load cell pedals was lost: this rep does not count. Waiting for Load cell pedals and Wheel base: plug them in.',
  },
  summary: { ...BRAKING, phase: 'summary', done: 10, own: null, summary: SUMMARY },
  stacked: { ...BRAKING, display: { ...PLAIN_DISPLAY, layout: 'stacked' } },
  'zoomed-preview': {
    ...BRAKING,
    nowS: 0.9,
    own: ownTrace(0.9),
    display: { ...PLAIN_DISPLAY, previewS: 0.6, zoom: 2, corridor: false },
  },
  'display-menu': { ...BRAKING, phase: 'paused', own: null, nowS: 0, menuRow: 1 },
  planned: {
    ...BRAKING,
    feedback: 'hidden',
    own: null,
    liveErrorLevel: null,
    plan: {
      name: 'Maintenance',
      title: 'block 3 of 5: targets shuffled',
      notes: [],
      summaries: [],
      lap: null,
    },
  },
  'planned-summary': {
    ...BRAKING,
    phase: 'summary',
    done: 10,
    own: null,
    summary: SUMMARY,
    plan: {
      name: 'Maintenance',
      title: 'block 4 of 5: targets shuffled',
      notes: [
        'Kiln hairpin: release error up 1.6 % on the first ten reps, limit 1.2 %. Tired leg: stop here.',
        'Next: carry-over check.',
      ],
      summaries: [
        { targetName: 'Kiln hairpin', summary: SUMMARY },
        { targetName: 'Coil bend', summary: { ...SUMMARY, medianScore: 81.4 } },
      ],
      lap: null,
    },
  },
  noting: {
    ...BRAKING,
    phase: 'rest',
    restS: 3.4,
    nowS: 2.6,
    own: ownTrace(2.6),
    brakeLevel: 0,
    note: { rep: 5, text: 'ease over the second patch of the drain' },
  },
  'noting-long': {
    ...BRAKING,
    phase: 'rest',
    restS: 3.4,
    nowS: 2.6,
    own: ownTrace(2.6),
    brakeLevel: 0,
    note: { rep: 125, text: `${'the rear gets light over the drain, '.repeat(5)}so ease there` },
  },
  'lap-rest': {
    ...BRAKING,
    phase: 'rest',
    restS: 11.4,
    nowS: 2.6,
    own: ownTrace(2.6),
    brakeLevel: 0,
    plan: {
      name: 'Sallow Fen test day',
      title: 'lap 2 of 3: zone 1 of 8',
      notes: [],
      summaries: [],
      lap: { roadTo: 'Coil bend, qualifying' },
    },
  },
  'lap-summary': {
    ...BRAKING,
    phase: 'summary',
    done: 10,
    own: null,
    summary: SUMMARY,
    plan: {
      name: 'Sallow Fen test day',
      title: 'laps 2 to 3 of 3',
      notes: ['The laps are done.'],
      summaries: LAP_SUMMARIES,
      lap: { roadTo: null },
    },
  },
  unmoved: {
    ...BRAKING,
    phase: 'arming',
    nowS: 0,
    own: null,
    brakeLevel: null,
    throttleLevel: null,
    steeringDeg: null,
    gear: null,
    liveErrorLevel: null,
    lastReps: [],
    health: [
      { name: 'Load cell pedals', rateHz: null, connected: true, waitingForMovement: true },
      { name: 'Wheel base', rateHz: null, connected: true, waitingForMovement: false },
    ],
  },
};
