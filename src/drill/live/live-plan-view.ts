import type { LivePlan as LivePlanView } from '../../live/live-view.ts';
import type { LiveZone } from '../../live/live-zone.ts';
import type { RepOutcome } from '../../score/rep-score.ts';
import type { DrillModel } from '../drill-model.ts';
import { isRevealed } from '../rep-lines.ts';
import type { RepDrive } from './rep-drive.ts';

type PlanMark = LivePlanView['marks'][number];

/** The corner from above with what was done where, once the rep's result may be read; else null. */
export function livePlanView(model: DrillModel): LivePlanView | null {
  const { stage, live, block } = model;
  if (live === null || stage.kind !== 'after' || stage.drive === null) return null;
  const { rep, drive } = stage;
  if (!isRevealed(model, { tag: rep, revealAtS: stage.revealAtS })) return null;
  const outcome = block.done.find(({ tag }) => tag.number === rep.number)?.outcome ?? null;
  const marks = [
    ...targetMarks(live.zone),
    ...ownMarks(live.zone, drive, outcome),
    ...live.zone.corner.bumps.map(({ atM }): PlanMark => ({ sM: atM, kind: 'bump' })),
  ];
  return { road: live.road, marks: marks.toSorted((a, b) => a.sM - b.sM) };
}

function targetMarks({ derived: { zone, keys } }: LiveZone): PlanMark[] {
  return [
    { sM: zone.brakePointM, kind: 'target brake point' },
    { sM: keys.startOfRelease.sM, kind: 'target start of release' },
    { sM: 0, kind: 'turn-in' },
    { sM: zone.slowestM, kind: 'slowest' },
  ];
}

function ownMarks(
  { derived: { keys } }: LiveZone,
  { car: { brakedFromM, events } }: RepDrive,
  outcome: RepOutcome | null,
): PlanMark[] {
  const marks: PlanMark[] = brakedFromM === null ? [] : [{ sM: brakedFromM, kind: 'brake point' }];
  const release = outcome?.kind === 'scored' ? outcome.live?.startOfReleaseErrorM : null;
  if (typeof release === 'number')
    marks.push({ sM: keys.startOfRelease.sM + release, kind: 'start of release' });
  for (const event of events) {
    if (event.kind === 'downshift') marks.push({ sM: event.atM, kind: 'downshift' });
    if (event.kind === 'lock-up') marks.push({ sM: event.fromM, kind: 'lock-up' });
  }
  return marks;
}
