import { joinPath, type Path, type Segment, type SegmentKind } from './path.ts';

/** How a driven line goes into its corner and through it. */
export const LINE_KINDS = [
  'smooth-apex',
  'clothoid',
  'decreasing-radius',
  'double-apex',
  'chicane',
] as const;
export type LineKind = (typeof LINE_KINDS)[number];

interface LineEnds {
  /** 1 turns left, -1 right (ISO 8855); of a chicane its first turn. */
  readonly sign: 1 | -1;
  readonly turnRad: number;
  readonly radiusM: number;
  /** From the straight to the first radius. */
  readonly entryM: number;
  /** From the last radius to the straight; null takes the entry's length, less where the turn has no room for it. */
  readonly exitM: number | null;
}

/** A second radius after the first one, with the stretch between them. */
interface SecondRadius {
  readonly betweenM: number;
  readonly secondRadiusM: number;
}

/** A line as a coach describes it: radii, lengths of the transitions and the angle turned in all. */
export type Line =
  | (LineEnds & { readonly kind: 'smooth-apex' | 'clothoid' })
  | (LineEnds &
      SecondRadius & {
        readonly kind: 'decreasing-radius';
        /** Angle turned on the first radius, transitions aside. */
        readonly firstArcRad: number;
      })
  | (LineEnds &
      SecondRadius & {
        readonly kind: 'double-apex';
        readonly firstArcRad: number;
        /** The widest place between the apexes. */
        readonly betweenRadiusM: number;
      })
  | (LineEnds &
      SecondRadius & {
        readonly kind: 'chicane';
        /** Angle of the second turn, the other way. */
        readonly secondTurnRad: number;
      });

/** Turning one way: what comes before the last arc, and what that arc and the exit are made of. Curvatures positive. */
interface Bend {
  readonly sign: 1 | -1;
  readonly turnRad: number;
  readonly before: readonly Segment[];
  readonly arcCurvature: number;
  readonly exit: { readonly kind: SegmentKind; readonly lengthM: number };
}

/**
 * The path of a line. The last arc of each bend takes the angle that the rest leaves over.
 * @throws RangeError where `missingTurnRad` is above 0
 */
export function pathOfLine(line: Line): Path {
  if (missingTurnRad(line) > 0) throw new RangeError('the transitions turn more than the line');
  return joinPath(bendsOf(line).flatMap(segmentsOf));
}

/** By how much the transitions and first arcs of a line turn more than all of it should, rad; 0 where they fit. */
export function missingTurnRad(line: Line): number {
  return Math.max(0, ...bendsOf(line).map((bend) => -arcRad(bend)));
}

/** Angle that a segment turns: every kind has its mean curvature in its middle. */
function turned({ lengthM, startCurvature, endCurvature }: Segment): number {
  return (lengthM * (startCurvature + endCurvature)) / 2;
}

/** Rounding may leave a hair less than nothing for an arc that is not there. */
const NO_ANGLE = 1e-9;

function arcRad({ turnRad, before, arcCurvature, exit }: Bend): number {
  const spent = before.reduce((sum, segment) => sum + turned(segment), 0);
  const left = turnRad - spent - (exit.lengthM * arcCurvature) / 2;
  return Math.abs(left) < NO_ANGLE ? 0 : left;
}

function segmentsOf(bend: Bend): Segment[] {
  const { before, arcCurvature, exit, sign } = bend;
  const segments = [
    ...before,
    arc(arcCurvature, arcRad(bend)),
    { ...exit, startCurvature: arcCurvature, endCurvature: 0 },
  ];
  return segments
    .filter(({ lengthM }) => lengthM > 0)
    .map((segment) => ({
      ...segment,
      startCurvature: sign * segment.startCurvature,
      endCurvature: sign * segment.endCurvature,
    }));
}

function arc(curvature: number, angleRad: number): Segment {
  return {
    kind: 'constant',
    lengthM: angleRad / curvature,
    startCurvature: curvature,
    endCurvature: curvature,
  };
}

function smooth(lengthM: number, startCurvature: number, endCurvature: number): Segment {
  return { kind: 'smooth', lengthM, startCurvature, endCurvature };
}

function bendsOf(line: Line): Bend[] {
  const { sign, turnRad, radiusM, entryM } = line;
  const first = 1 / radiusM;
  switch (line.kind) {
    case 'smooth-apex':
    case 'clothoid': {
      const kind = line.kind === 'clothoid' ? 'clothoid' : 'smooth';
      const entry: Segment = { ...smooth(entryM, 0, first), kind };
      return [withExit(line, { sign, turnRad, before: [entry], arcCurvature: first }, kind)];
    }
    case 'decreasing-radius': {
      const second = 1 / line.secondRadiusM;
      const before = [
        smooth(entryM, 0, first),
        arc(first, line.firstArcRad),
        smooth(line.betweenM, first, second),
      ];
      return [withExit(line, { sign, turnRad, before, arcCurvature: second })];
    }
    case 'double-apex': {
      const [between, second] = [1 / line.betweenRadiusM, 1 / line.secondRadiusM];
      const before = [
        smooth(entryM, 0, first),
        arc(first, line.firstArcRad),
        smooth(line.betweenM / 2, first, between),
        smooth(line.betweenM / 2, between, second),
      ];
      return [withExit(line, { sign, turnRad, before, arcCurvature: second })];
    }
    case 'chicane': {
      const [half, second] = [line.betweenM / 2, 1 / line.secondRadiusM];
      const exit = { kind: 'smooth', lengthM: half } as const;
      return [
        { sign, turnRad, before: [smooth(entryM, 0, first)], arcCurvature: first, exit },
        withExit(line, {
          sign: sign === 1 ? -1 : 1,
          turnRad: line.secondTurnRad,
          before: [smooth(half, 0, second)],
          arcCurvature: second,
        }),
      ];
    }
  }
}

function withExit(
  { exitM, entryM }: LineEnds,
  bend: Omit<Bend, 'exit'>,
  kind: SegmentKind = 'smooth',
): Bend {
  const roomRad = arcRad({ ...bend, exit: { kind, lengthM: 0 } });
  const fitting = Math.min(entryM, Math.max(0, (2 * roomRad) / bend.arcCurvature));
  return { ...bend, exit: { kind, lengthM: exitM ?? fitting } };
}

/** The line with all its lengths and radii scaled: the same angles on a smaller line. */
export function scaledLine(line: Line, factor: number): Line {
  const ends = {
    radiusM: line.radiusM * factor,
    entryM: line.entryM * factor,
    exitM: line.exitM === null ? null : line.exitM * factor,
  };
  if (!('betweenM' in line)) return { ...line, ...ends };
  const second = {
    betweenM: line.betweenM * factor,
    secondRadiusM: line.secondRadiusM * factor,
  };
  if (line.kind !== 'double-apex') return { ...line, ...ends, ...second };
  return { ...line, ...ends, ...second, betweenRadiusM: line.betweenRadiusM * factor };
}
