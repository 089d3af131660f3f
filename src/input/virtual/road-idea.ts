import type { DrillView } from '../../drill/drill-view.ts';
import type { LiveView, PlaceTrack } from '../../live/live-view.ts';
import type { BrakingIdea } from './braking-idea.ts';

/**
 * What a driver has in mind of a zone of the live car: an idea of braking over metres from the brake point instead of
 * seconds from the first touch, with the place of that point and the last gear.
 */
export interface RoadIdea {
  /** m from turn-in. */
  readonly brakeM: number;
  /** Its times are metres. */
  readonly idea: BrakingIdea;
  readonly slowestGear: number;
}

/** The idea of a driver who is shown the target and the brake mark; what is not shown is as it was `known` before. */
export function roadIdeaOf(view: DrillView, live: LiveView, known: RoadIdea | null): RoadIdea {
  const mark = live.marks.find(({ kind }) => kind === 'brake')?.sM ?? null;
  const brakeM = mark ?? known?.brakeM ?? guessedBrakeM(live);
  const slowestGear = view.target?.gears.at(-1)?.gear ?? known?.slowestGear ?? GUESSED_GEAR;
  const { target } = live.level;
  if (target === null || target.placeM.length === 0)
    return { brakeM, slowestGear, idea: known?.idea ?? guessedIdeaOverRoad(brakeM) };
  return { brakeM, slowestGear, idea: ideaOfLanes(live, target) };
}

const GUESSED_GEAR = 2;
/** What a driver who has seen nothing of the zone goes by. Common practice, no source. */
const GUESSED_BOARD_M = 100;

/** At the board that is customary, where there is one. */
function guessedBrakeM({ marks }: LiveView): number {
  return marks.find(({ word }) => word === String(GUESSED_BOARD_M))?.sM ?? -GUESSED_BOARD_M;
}

/** Up, held to turn-in, and off again over the way to the apex. */
function guessedIdeaOverRoad(brakeM: number): BrakingIdea {
  const [peakM, releaseM] = [12, -brakeM];
  const offM = releaseM + 30;
  return {
    levelAt: (m) => 0.55 * Math.max(0, Math.min(1, m / peakM, (offM - m) / (offM - releaseM))),
    steeringDegAt: () => 0,
    peakS: peakM,
    startOfReleaseS: releaseM,
    brakeOffS: offM,
    gears: [],
  };
}

function ideaOfLanes({ steeringDeg, startOfReleaseM }: LiveView, level: PlaceTrack): BrakingIdea {
  const fromM = level.placeM[0] as number;
  const levelAt = along(level, fromM);
  const steeringDegAt = steeringDeg.target === null ? () => 0 : along(steeringDeg.target, fromM);
  const peak = level.value.indexOf(Math.max(...level.value));
  const off = level.value.findLastIndex((value) => value > 0);
  const offM = level.placeM[Math.min(off + 1, level.placeM.length - 1)] as number;
  return {
    levelAt: (m) => (m < 0 ? 0 : levelAt(m)),
    steeringDegAt,
    peakS: (level.placeM[peak] as number) - fromM,
    startOfReleaseS: (startOfReleaseM ?? 0) - fromM,
    brakeOffS: offM - fromM,
    gears: [],
  };
}

/** The track over metres from `fromM`, linear between its points and held outside them. */
function along({ placeM, value }: PlaceTrack, fromM: number): (m: number) => number {
  let right = 1;
  return (m) => {
    const sM = fromM + m;
    while (right < placeM.length - 1 && placeM[right]! < sM) right++;
    while (right > 1 && placeM[right - 1]! > sM) right--;
    const [a, b] = [placeM[right - 1]!, placeM[right] ?? placeM[right - 1]!];
    const share = b > a ? Math.min(1, Math.max(0, (sM - a) / (b - a))) : 0;
    return value[right - 1]! + ((value[right] ?? value[right - 1]!) - value[right - 1]!) * share;
  };
}
