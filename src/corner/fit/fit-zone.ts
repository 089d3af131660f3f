import { STANDARD_GRAVITY_MPS2 } from '../../units.ts';
import { type DecelerationFit, fitByDeceleration } from './fit-by-deceleration.ts';
import type { FitCar } from './fit-car.ts';
import { fitGears } from './fit-gears.ts';
import { type FittedLine, fitLine } from './fit-line.ts';
import { type FitSignals, placeAt, SMOOTH_S } from './fit-signals.ts';
import { brakingShare, turningShare } from './grip-share.ts';
import { localQuadratic } from './local-quadratic.ts';
import { type TurningSignal, turningSignals } from './turning-signal.ts';
import type { Basis, EntryFound, Figure, Found, ZoneFit } from './zone-fit.ts';

/** What whoever asks for the fit knows beside the log; null is not known. */
export interface FitWish {
  readonly car: FitCar | null;
  /** Friction for the radius where no signal says it. */
  readonly grip: number | null;
}

/** A steering wheel does not get from straight to its place sooner (common practice, no source). */
const QUICKEST_ENTRY_S = 0.15;
/** Without any sign of it the exit is as long as the entry, and the corner turns a right angle. */
const ASSUMED_TURN_RAD = Math.PI / 2;

const SIGNAL_WORDS: Readonly<Record<TurningSignal['kind'], string>> = {
  'yaw-rate': 'yaw rate over speed',
  'lateral-acceleration': 'lateral acceleration over squared speed',
  steering: "steering, by the car's wheelbase, ratio and understeer",
  'steering-shape': 'the shape of steering, understeer left out',
};

/** What one logged braking zone says about its corner. */
export function fitZone(signals: FitSignals, wish: FitWish): ZoneFit {
  const { timeS, placeM, slowestS, slowestMps } = signals;
  const slowestM = placeAt(timeS, placeM, slowestS);
  const wishes = { slowestM, shortestM: QUICKEST_ENTRY_S * slowestMps };
  const lines = turningSignals(signals, wish.car).flatMap((signal) => {
    const line = fitLine(signal, placeM, wishes);
    return line === null ? [] : [{ signal, line }];
  });
  const slowing = fitByDeceleration(signals);
  const first = lines[0] ?? null;
  const share = brakingShare(signals, slowestM - turnInOf(first, slowing, slowestM), wish.car);
  const facts: Facts = { signals, wish, slowestM, first, slowing, share };
  const figures = figuresOf(facts);
  const shape = figures.radiusM;
  return {
    number: signals.number,
    figures: { ...figures, ...(shape && turningShare(shape, slowestMps, wish.car)) },
    entry: entryOf(first, slowing),
    direction: directionOf(lines),
    shiftsM: fitGears(signals)?.shiftsM.map((sM) => slowestM - sM) ?? [],
    cautions: [...cautionsOf(lines, figures), ...brakeCautions(figures)],
  };
}

interface TurnedLine {
  readonly signal: TurningSignal;
  readonly line: FittedLine;
}

interface Facts {
  readonly signals: FitSignals;
  readonly wish: FitWish;
  readonly slowestM: number;
  readonly first: TurnedLine | null;
  readonly slowing: DecelerationFit | null;
  readonly share: Found | null;
}

type Figures = Partial<Record<Figure, Found>>;

const measured = (value: number, rule: string): Found => ({ value, basis: 'measured', rule });
const estimated = (value: number, rule: string): Found => ({ value, basis: 'estimated', rule });
const assumed = (value: number, rule: string): Found => ({ value, basis: 'assumed', rule });

function figuresOf(facts: Facts): Figures {
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

function turnInOf(
  first: TurnedLine | null,
  slowing: DecelerationFit | null,
  slowestM: number,
): number {
  return first?.line.turnInM ?? slowestM - (slowing?.entryM ?? 0);
}

function lineFigures(facts: Facts): Figures {
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

function exitFigures({ signals }: Facts, line: FittedLine, radiusM: number): Figures {
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

function speedFigures(facts: Facts, { entryM }: DecelerationFit): Figures {
  const rule = 'fall of deceleration to the slowest point, on a friction circle';
  return {
    turnInM: estimated(entryM, rule),
    entryM: estimated(entryM, rule),
    radiusM: radiusByGrip(facts),
    turnRad: assumed(ASSUMED_TURN_RAD, 'nothing in the log says how far the corner turns'),
  };
}

/** R = v^2 / (mu g), with the grip of whoever knows it best. */
function radiusByGrip({ signals: { slowestMps }, wish, slowing, share }: Facts): Found {
  const w = slowestMps ** 2;
  if (wish.grip !== null)
    return estimated(
      w / (wish.grip * STANDARD_GRAVITY_MPS2),
      `slowest speed and the given grip of ${wish.grip}: v^2 / (mu g)`,
    );
  if (wish.car !== null) {
    const taken = Math.min(1, share?.value ?? 1);
    return estimated(
      wish.car.radiusM(slowestMps, taken),
      `slowest speed and ${Math.round(100 * taken)} % of the car's grip`,
    );
  }
  const along = slowing === null ? USUAL_MPS2 : slowing.alongMps2 + slowing.perSpeedSquared * w;
  const mu = along / STANDARD_GRAVITY_MPS2;
  const by = slowing === null ? 'assumed' : 'as the straight braking shows';
  return estimated(w / along, `v^2 / (mu g) with a grip of ${mu.toFixed(2)}, ${by}`);
}

/** A grip of 1.4: a racing tyre without downforce (common practice, no source). */
const USUAL_MPS2 = 1.4 * STANDARD_GRAVITY_MPS2;

function gearFigures({ signals, wish, slowestM }: Facts): Figures {
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

function entryOf(first: TurnedLine | null, slowing: DecelerationFit | null): EntryFound {
  if (first === null)
    return slowing === null
      ? { kind: 'smooth-apex', basis: 'assumed', rule: 'the zone is too short to see it' }
      : {
          kind: slowing.entry,
          basis: 'estimated',
          rule: 'fits the fall of deceleration better',
        };
  const { 'smooth-apex': smooth, clothoid } = first.line.missShares;
  const per = (share: number): string => `${(100 * share).toFixed(1)} %`;
  return {
    kind: first.line.entry,
    basis: 'estimated',
    rule: `left over: smooth-apex ${per(smooth)}, clothoid ${per(clothoid)} of the signal`,
  };
}

function directionOf(lines: readonly TurnedLine[]): 'left' | 'right' | null {
  const said = lines.find(({ signal }) => signal.isSigned);
  return said === undefined ? null : said.line.curvature > 0 ? 'left' : 'right';
}

/** A single bend with a logger's noise leaves half of this; two apexes or a tightening line leave more. */
const POOR_SHARE = 0.06;
/** Two signals that differ by more contradict each other. */
const CONTRADICTION = 0.15;

function cautionsOf(lines: readonly TurnedLine[], { radiusM }: Figures): string[] {
  const [first] = lines;
  if (first === undefined) return [];
  const cautions: string[] = [];
  if (first.line.missShare > POOR_SHARE)
    cautions.push(
      `one bend leaves ${Math.round(100 * first.line.missShare)} % of the turning over: two apexes, a changing radius, a slide, or noise`,
    );
  if (first.line.turnsBack)
    cautions.push('the car also turns the other way: a chicane needs its second turn by hand');
  for (const { signal, line } of lines.slice(1)) {
    if (!signal.isCurvature || radiusM === undefined) continue;
    const otherM = Math.abs(1 / line.curvature);
    if (Math.abs(otherM - radiusM.value) <= CONTRADICTION * radiusM.value) continue;
    cautions.push(`${SIGNAL_WORDS[signal.kind]} says a radius of ${otherM.toFixed(0)} m`);
  }
  return cautions;
}

/** Turn-in found so near to the brake point is where the data begin. */
const AT_BRAKE_SHARE = 0.9;

function brakeCautions({ turnInM, brakePointM }: Figures): string[] {
  if (turnInM === undefined || turnInM.value < AT_BRAKE_SHARE * brakePointM!.value) return [];
  return ['the car turns as soon as it brakes, or sooner: turn-in and entry are uncertain'];
}
