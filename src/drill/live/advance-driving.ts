import type { DrillModel, Stage } from '../drill-model.ts';
import { type Advance, moveOn, standAt, stay } from '../progress.ts';
import { finishRep } from '../rep-end.ts';
import { zoneUnderWay } from './advance-rolling.ts';
import { AFTER_OFF_S } from './after-off-s.ts';
import { driveTo, type RepDrive } from './rep-drive.ts';

/** How long a brake that is still held is watched beyond the slowest point. */
const BEYOND_SLOWEST_S = 1.5;
/** What is recorded of a car that has stopped short. */
const AFTER_STOP_S = 0.3;
/** A car that creeps and never gets there is not waited for. */
const LONGEST_S = 20;

type Driving = Extract<Stage, { kind: 'driving' }>;

/** From the onset of braking to the end of the rep. */
export const advanceDriving: Advance<'driving'> = (model, stage, batch, cursor) => {
  const drive = driven(model, stage, batch, batch.untilS);
  const { timeS, value } = batch.brake;
  let off = stage.offSinceS;
  let i = cursor;
  for (; i < timeS.length && timeS[i]! <= endOfRepS(stage.cueS, drive, off); i++)
    off = value[i]! > stage.offLevel ? null : (off ?? timeS[i]!);
  const endS = endOfRepS(stage.cueS, drive, off);
  if (endS > batch.untilS) return stay(model, { ...stage, drive, offSinceS: off }, i);
  const { cueS } = stage;
  // What the car did behind the end in a long batch is no part of the rep.
  const end = driven(model, stage, batch, endS);
  return moveOn(finishRep(standAt(model, batch, i, endS), { cueS, endS }, null, end), i);
};

function driven(
  model: DrillModel,
  { drive, cueS }: Driving,
  batch: Parameters<typeof driveTo>[2],
  untilS: number,
): RepDrive {
  return driveTo(drive, zoneUnderWay(model), batch, cueS, untilS);
}

/** When the rep is over, as far as is known: what has not happened yet happens later than the batch. */
function endOfRepS(cueS: number, { marks }: RepDrive, offSinceS: number | null): number {
  const slowestS = cueS + (marks.slowestAtS ?? Number.POSITIVE_INFINITY);
  const stoppedS = cueS + (marks.stoppedAtS ?? Number.POSITIVE_INFINITY);
  const offS = offSinceS ?? Number.POSITIVE_INFINITY;
  return Math.min(
    Math.max(offS, slowestS) + AFTER_OFF_S,
    slowestS + BEYOND_SLOWEST_S,
    stoppedS + AFTER_STOP_S,
    cueS + LONGEST_S,
  );
}
