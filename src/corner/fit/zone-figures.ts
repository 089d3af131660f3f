import type { DecelerationFit } from './fit-by-deceleration.ts';
import { fitGears } from './fit-gears.ts';
import type { FittedLine } from './fit-line.ts';
import { SMOOTH_S } from './fit-signals.ts';
import { localQuadratic } from './local-quadratic.ts';
import { radiusByGrip } from './radius-by-grip.ts';
import { SIGNAL_WORDS } from './turned-line.ts';
import type { ZoneFacts } from './zone-facts.ts';
import { assumed, type Basis, estimated, type Figures, type Found, measured } from './zone-fit.ts';

/** Without any sign of it the exit is as long as the entry, and the corner turns a right angle. */
const ASSUMED_TURN_RAD = Math.PI / 2;

/** The numbers of a zone that its signals say, and the car and the wish where they do not. */
export function zoneFigures(facts: ZoneFacts): Figures {
  const { signals, slowestM, share } = facts;
  const { approachMps, slowestMps } = signals;
  return {
    approachSpeedMps: measured(approachMps, 'speed where the brake goes on'),
    brakePointM: measured(slowestM, 'onset of the brake, way by the integral of speed'),
    slowestSpeedMps: measured(slowestMps, 'least smoothed speed'),
    ...lineFigures(facts),
    ...gearFigures(facts),
    ...(share === null ? {} : { brakingGripShare: share }),
  };
}

function lineFigures(facts: ZoneFacts): Figures {
  const { first, slowing, slowestM } = facts;
  if (first === null) return slowing === null ? {} : speedFigures(facts, slowing);
  const { line, signal } = first;
  const rule = SIGNAL_WORDS[signal.kind];
  const basis: Basis = signal.isCurvature ? 'measured' : 'estimated';
  const found = (value: number, words: string): Found => ({ value, basis, rule: words });
  const radius = signal.isCurvature
    ? found(Math.abs(1 / line.curvature), rule)
    : radiusByGrip(facts);
  return {
    turnInM: found(slowestM - line.turnInM, `onset of turning, by ${rule}`),
    entryM: found(line.entryM, `turn-in to the smallest radius, by ${rule}`),
    radiusM: radius,
    ...exitFigures(facts, line, radius.value),
  };
}

function exitFigures({ signals }: ZoneFacts, line: FittedLine, radiusM: number): Figures {
  const { timeS, speedMps, placeM } = signals;
  const endM = placeM.at(-1)!;
  const speedAt = (sM: number): number => {
    const i = placeM.findIndex((place) => place >= sM);
    return localQuadratic(timeS, speedMps, timeS[i < 0 ? timeS.length - 1 : i]!, SMOOTH_S).value;
  };
  if (line.exit === null) {
    const arcM = Math.max(0, endM - line.turnInM - line.entryM);
    return {
      turnRad: estimated(
        (line.entryM + arcM) / radiusM,
        'turned until the log of the zone ends, and an exit as long as the entry',
      ),
      endSpeedMps: measured(speedAt(endM), 'end of the logged zone, still in the corner'),
    };
  }
  const { arcM, exitM } = line.exit;
  return {
    exitM: estimated(exitM, 'smallest radius to straight, fitted'),
    turnRad: estimated((line.entryM / 2 + arcM + exitM / 2) / radiusM, 'angle of the fitted line'),
    endSpeedMps: measured(
      speedAt(line.turnInM + line.entryM + arcM + exitM),
      'where the fitted line ends',
    ),
  };
}

function speedFigures(facts: ZoneFacts, { entryM }: DecelerationFit): Figures {
  const rule = 'fall of deceleration to the slowest point, on a friction circle';
  return {
    turnInM: estimated(entryM, rule),
    entryM: estimated(entryM, rule),
    radiusM: radiusByGrip(facts),
    turnRad: assumed(ASSUMED_TURN_RAD, 'nothing in the log says how far the corner turns'),
  };
}

function gearFigures({ signals, wish, slowestM }: ZoneFacts): Figures {
  const gears = fitGears(signals);
  if (gears !== null) {
    const last = gears.shiftsM.at(-1);
    return {
      approachGear: measured(gears.approach, 'gear where the brake goes on'),
      slowestGear: measured(gears.slowest, 'gear at the slowest point'),
      ...(last === undefined
        ? {}
        : { lastDownshiftM: measured(slowestM - last, 'first row in the lower gear') }),
    };
  }
  if (wish.car === null) return {};
  const { approachMps, slowestMps } = signals;
  const rule = 'lowest gear of the car, from second up, that does not over-rev';
  return {
    approachGear: estimated(wish.car.lowestGear(approachMps), rule),
    slowestGear: estimated(wish.car.lowestGear(slowestMps), rule),
  };
}
