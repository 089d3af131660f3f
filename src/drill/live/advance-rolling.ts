import { LEAD_IN_S, type LiveZone } from '../../live/live-zone.ts';
import type { DrillModel } from '../drill-model.ts';
import { onsetRule, searchOnset, startOnsetSearch } from '../onset-search.ts';
import { type Advance, moveOn, standAt, stay } from '../progress.ts';
import { recordedBatch } from '../recording.ts';
import { finishRep } from '../rep-end.ts';
import { ARM_S } from '../stages.ts';
import { driveTo, startDrive } from './rep-drive.ts';

/** The car begins to roll; the brake point that the driver prepared for comes a fixed time later, and is the cue. */
export function enterRolling(model: DrillModel, zone: LiveZone): DrillModel {
  const { recording, atS, levels } = model;
  if (recording === null) throw new Error(`no recording of the rep that begins at ${atS} s`);
  const before = recordedBatch(recording, atS - ARM_S, atS);
  const cueS = atS + LEAD_IN_S;
  const search = startOnsetSearch(onsetRule(before.brake.value), levels.brake, atS);
  const drive = startDrive(zone, before, cueS);
  return { ...model, stage: { kind: 'rolling', cueS, search, drive } };
}

/** How long beyond the brake point a driver who has not braked is waited for where turn-in comes too soon for that. */
const LATE_S = 1;

/** Rolls at the approach speed until the foot is on the brake, or turn-in is passed without. */
export const advanceRolling: Advance<'rolling'> = (model, stage, batch, cursor) => {
  const { cueS } = stage;
  const zone = zoneUnderWay(model);
  const giveUpS = cueS + neverBrakedS(zone);
  const found = searchOnset(stage.search, batch.brake, cursor, Math.min(batch.untilS, giveUpS));
  const at = (atS: number) => standAt(model, batch, found.cursor, atS);
  const driven = (untilS: number) => driveTo(stage.drive, zone, batch, cueS, untilS);
  if (found.foundAtS !== null) {
    const drive = driven(found.foundAtS);
    const offLevel = found.search.rule.highLevel;
    const next = { kind: 'driving', cueS, offLevel, offSinceS: null, drive } as const;
    return moveOn([{ ...at(found.foundAtS), stage: next }, []], found.cursor);
  }
  if (batch.untilS < giveUpS) {
    const drive = driven(batch.untilS);
    return stay(model, { ...stage, search: found.search, drive }, found.cursor);
  }
  const end = { cueS, endS: giveUpS };
  return moveOn(finishRep(at(giveUpS), end, null, driven(giveUpS)), found.cursor);
};

/** When it is settled that the brake was never touched, seconds from the cue; fast bends are braked for after turn-in. */
function neverBrakedS({ rollFromM, corner, derived }: LiveZone): number {
  const { brakePointM, slowestM } = derived.zone;
  const speedMps = corner.approachSpeedMps;
  const giveUpM = Math.max(0, Math.min(slowestM, brakePointM + LATE_S * speedMps));
  return (giveUpM - rollFromM) / speedMps - LEAD_IN_S;
}

export function zoneUnderWay({ live, atS }: DrillModel): LiveZone {
  if (live === null) throw new Error(`no zone is driven at ${atS} s`);
  return live.zone;
}
