import { driveLiveCar, STAMP_SPREAD_S, startLiveCar } from '../../live/drive-live-car.ts';
import type { LiveCar } from '../../live/live-car.ts';
import { liveInputs, NO_INPUTS } from '../../live/live-inputs.ts';
import { LEAD_IN_S, type LiveZone } from '../../live/live-zone.ts';
import type { RigBatch } from '../../trace/rig-batch.ts';
import { batchAfter } from '../batch-after.ts';
import { appendSamples, EMPTY_LOG, type SampleLog } from '../sample-log.ts';

/** How often the drill looks at the car. The looks lie on a grid of the cue's, so that a batch's length decides nothing. */
export const STRIDE_S = 0.005;
/** Slower than this the car has as good as stopped. */
const STOPPED_MPS = 2;

/** What was done where: places, m from turn-in, in place of times. */
export interface OwnLanes {
  readonly level: SampleLog;
  readonly steeringDeg: SampleLog;
  readonly speedMps: SampleLog;
  /** ISO 8855. */
  readonly accelYMps2: SampleLog;
  /** Grip asked for over grip there is. */
  readonly frontUse: SampleLog;
  readonly rearUse: SampleLog;
}

/** What is read off the car at each look. */
const LANES: Readonly<Record<keyof OwnLanes, (car: LiveCar) => number>> = {
  level: ({ held }) => held.brake,
  steeringDeg: ({ held }) => held.steeringDeg,
  speedMps: ({ speedMps }) => speedMps,
  accelYMps2: ({ accelYMps2 }) => accelYMps2,
  frontUse: ({ front }) => front.use,
  rearUse: ({ rear }) => rear.use,
};
const LANE_NAMES = Object.keys(LANES) as readonly (keyof OwnLanes)[];

function lanes(of: (lane: keyof OwnLanes) => SampleLog): OwnLanes {
  const named = LANE_NAMES.map((lane) => [lane, of(lane)] as const);
  return Object.fromEntries(named) as unknown as OwnLanes;
}

/** Moments of the drive, seconds from the cue; null while they have not come. */
interface DriveMarks {
  /** The target's slowest point is passed. */
  readonly slowestAtS: number | null;
  readonly stoppedAtS: number | null;
}

/** The live car on its way and what is drawn of it. */
export interface RepDrive {
  readonly car: LiveCar;
  /** Looks taken so far. */
  readonly strides: number;
  /** Samples up to here, on the source's clock, are with the car. */
  readonly fedS: number;
  readonly marks: DriveMarks;
  readonly own: OwnLanes;
}

/**
 * The car about to roll.
 *
 * @param before what foot and hands did since the record of the rep began, on the source's clock
 */
export function startDrive(zone: LiveZone, before: RigBatch, cueS: number): RepDrive {
  return {
    car: driveLiveCar(zone, startLiveCar(zone), liveInputs(before, cueS), -LEAD_IN_S),
    strides: 0,
    fedS: before.untilS,
    marks: { slowestAtS: null, stoppedAtS: null },
    own: lanes(() => EMPTY_LOG),
  };
}

/** Drives on as far as the samples up to `untilS` allow, which is at most the end of the batch. */
export function driveTo(
  drive: RepDrive,
  zone: LiveZone,
  batch: RigBatch,
  cueS: number,
  untilS: number,
): RepDrive {
  const last = Math.floor((untilS - STAMP_SPREAD_S - cueS + LEAD_IN_S) / STRIDE_S);
  const strides = Math.max(0, last - drive.strides);
  let { car, marks } = drive;
  let inputs = liveInputs(batchAfter(batch, drive.fedS), cueS);
  const placeM = new Float64Array(strides);
  const values = LANE_NAMES.map(() => new Float64Array(strides));
  for (let i = 0; i < strides; i++) {
    const atS = (drive.strides + i + 1) * STRIDE_S - LEAD_IN_S;
    car = driveLiveCar(zone, car, inputs, atS);
    inputs = NO_INPUTS;
    marks = marked(marks, zone, car, atS);
    placeM[i] = car.sM;
    for (let lane = 0; lane < values.length; lane++)
      values[lane]![i] = LANES[LANE_NAMES[lane]!](car);
  }
  return {
    car: inputs === NO_INPUTS ? car : driveLiveCar(zone, car, inputs, timeOf(drive)),
    strides: drive.strides + strides,
    fedS: batch.untilS,
    marks,
    own: lanes((lane) => {
      const value = values[LANE_NAMES.indexOf(lane)]!;
      return appendSamples(drive.own[lane], { timeS: placeM, value }, 0, strides, 0);
    }),
  };
}

/** Of the last look, seconds from the cue. */
function timeOf({ strides }: Pick<RepDrive, 'strides'>): number {
  return strides * STRIDE_S - LEAD_IN_S;
}

function marked(
  { slowestAtS, stoppedAtS }: DriveMarks,
  zone: LiveZone,
  { sM, speedMps }: LiveCar,
  atS: number,
): DriveMarks {
  return {
    slowestAtS: slowestAtS ?? (sM >= zone.derived.zone.slowestM ? atS : null),
    stoppedAtS: stoppedAtS ?? (speedMps < STOPPED_MPS ? atS : null),
  };
}
