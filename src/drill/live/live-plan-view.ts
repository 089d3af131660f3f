import type { LivePlan as LivePlanView } from '../../live/live-view.ts';
import type { LiveZone } from '../../live/live-zone.ts';
import { targetMarks } from '../../live/target-plan.ts';
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
  const marks = [...targetMarks(live.zone.derived), ...ownMarks(live.zone, drive, outcome)];
  return { road: live.road, marks: marks.toSorted((a, b) => a.sM - b.sM) };
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
