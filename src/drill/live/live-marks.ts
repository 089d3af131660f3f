import type { RoadMark } from '../../live/live-view.ts';
import { BOARDS_M, type LiveZone } from '../../live/live-zone.ts';
import type { DerivedTarget } from '../../target/derive/derive-target.ts';

/**
 * What stands beside the road: boards, the coach's mark and turn-in always, the brake mark where a target is given.
 * Ascending along the road.
 */
export function liveMarks({ coachMark }: LiveZone, brakeMark: DerivedTarget | null): RoadMark[] {
  const marks: RoadMark[] = BOARDS_M.map((beforeM) => ({
    sM: -beforeM,
    kind: 'board',
    word: String(beforeM),
  }));
  marks.push({ sM: 0, kind: 'turn-in', word: 'turn-in' });
  if (coachMark !== null) marks.push({ ...coachMark, kind: 'coach' });
  if (brakeMark !== null)
    marks.push({ sM: brakeMark.zone.brakePointM, kind: 'brake', word: 'brake' });
  return marks.sort((a, b) => a.sM - b.sM);
}
