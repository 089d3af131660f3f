import { Problem } from '../../problem.ts';
import { degreesFromRadians, kmhFromMetresPerSecond } from '../../units.ts';
import { type Line, missingTurnRad } from '../line.ts';
import { readCornerSheet } from '../read-corner-sheet.ts';
import { approachGear } from '../sheet-from-five-numbers.ts';
import { FIGURE_WORDS, metricText, rangeText } from './figure-words.ts';
import type { CornerFit, Merged } from './fit-corner.ts';
import { commented } from './wrapped-comment.ts';
import { FIGURES } from './zone-fit.ts';

/** Of a corner sheet, by its schema. */
const [SMALLEST_M, LARGEST_M] = [4, 1000];
const LONGEST_APPROACH_M = 1500;
/** A wet road wants a longer one than was used (as `corner new` takes it). */
const WET_GRIP = 0.55;
/** Where nothing says the gear at the slowest point. */
const USUAL_GEAR = 3;
const SHARES = [0.3, 1] as const;

/**
 * The text of a corner sheet with what was found, how, and what could not be known, as comments.
 * @throws Problem where the numbers make no corner
 */
export function fittedSheetText(fit: CornerFit, source: string, name: string): string {
  const line = lineOf(fit);
  const {
    approachSpeedMps: approach,
    slowestSpeedMps: slowest,
    brakePointM,
    turnInM,
  } = fit.figures;
  const straightM = Math.max(0, brakePointM!.value - turnInM!.value);
  const slowestGear = fit.figures.slowestGear?.value ?? USUAL_GEAR;
  const guess = approachGear({
    gear: slowestGear,
    approachSpeedMps: approach!.value,
    slowestSpeedMps: slowest!.value,
  });
  const text = [
    head(fit, source),
    `name: ${JSON.stringify(name)}`,
    'corner_type: logged corner',
    `direction: ${fit.direction.side} # ${fit.direction.basis}`,
    '',
    'line:',
    `  entry: ${line.kind} # ${entryWords(fit)}`,
    `  turn_deg: ${tenthsUp(degreesFromRadians(line.turnRad))}${said(fit.figures.turnRad)}`,
    `  radius_m: ${line.radiusM}${said(fit.figures.radiusM)}`,
    `  entry_length_m: ${line.entryM}${said(fit.figures.entryM)}`,
    ...(line.exitM === null ? [] : [`  exit_length_m: ${line.exitM}${said(fit.figures.exitM)}`]),
    '',
    `approach_speed_kmh: ${tenths(kmhFromMetresPerSecond(approach!.value))}${said(approach)}`,
    `approach_length_m: ${approachLength(straightM)} # assumed: what a wet road would need`,
    '',
    ...gearLines(fit, slowestGear, guess),
    '',
    ...variantLines(fit),
    '',
  ].join('\n');
  // what is written must be what can be read
  readCornerSheet(text, 'fitted.yaml');
  return text;
}

const tenths = (value: number): number => Number(value.toFixed(1)) + 0;
const tenthsUp = (value: number): number => Math.ceil(10 * value - 1e-6) / 10;

/** The line in the digits of the file; it turns at least as far as its own transitions do. */
function lineOf({ figures, entry }: CornerFit): Line {
  const { radiusM, entryM, exitM, turnRad } = figures;
  if (radiusM === undefined || entryM === undefined || turnRad === undefined)
    throw noCorner('the zone is too short to see a corner in it');
  if (radiusM.value < SMALLEST_M || radiusM.value > LARGEST_M)
    throw noCorner(`a radius of ${radiusM.value.toFixed(1)} m is no corner's`);
  const line: Line = {
    kind: entry.kind === 'smooth-apex' ? 'smooth-apex' : 'clothoid',
    sign: 1,
    turnRad: turnRad.value,
    radiusM: tenths(radiusM.value),
    entryM: Math.max(0.1, tenths(entryM.value)),
    exitM: exitM === undefined ? null : Math.max(0.1, tenths(exitM.value)),
  };
  const roomRad = line.turnRad + missingTurnRad(line);
  if (roomRad > 2 * Math.PI) throw noCorner('the fitted line turns more than once around');
  return { ...line, turnRad: roomRad };
}

function noCorner(what: string): Problem {
  return new Problem(what, {
    where: 'corner fit',
    next: 'Choose another zone in `ebbline trace zones`, or make the sheet by numbers: ebbline corner new',
  });
}

function approachLength(straightM: number): number {
  return Math.min(LONGEST_APPROACH_M, 10 * Math.max(1, Math.ceil(straightM / WET_GRIP / 10)));
}

function said(found: Merged | undefined): string {
  return found === undefined ? '' : ` # ${found.basis}`;
}

function entryWords({ entry }: CornerFit): string {
  return entry.kind === 'constant'
    ? 'the log shows no transition at all: a brake cannot taper on that, so the shortest is written'
    : `${entry.basis}: ${entry.rule}`;
}

function gearLines({ figures, shiftsM }: CornerFit, slowest: number, guess: number): string[] {
  const { approachGear: approach, slowestGear, turnInM, entryM } = figures;
  // the sheet counts from the smallest radius, the log from the slowest point
  const apexBeforeSlowestM = turnInM!.value - entryM!.value;
  const places = shiftsM.map((beforeM) => tenths(beforeM - apexBeforeSlowestM)).join(', ');
  return [
    'gears:',
    `  approach: ${Math.max(slowest, approach?.value ?? guess)} # ${approach?.basis ?? 'assumed, from the speeds'}`,
    `  slowest: ${slowest} # ${slowestGear?.basis ?? 'assumed'}`,
    ...(places === ''
      ? []
      : [
          '  # Without this line each downshift comes as early as is safe; the log has:',
          `  # shifts_before_apex_m: [${places}]`,
        ]),
  ];
}

function variantLines({ figures: { brakingGripShare: share } }: CornerFit): string[] {
  const used = share === undefined ? 1 : Math.min(SHARES[1], Math.max(SHARES[0], share.value));
  const rounded = Number(used.toFixed(2));
  if (share === undefined || rounded === 1) return ['variants:', '  - variant: as-driven'];
  return [
    'variants: # the first is taken where none is named',
    '  - variant: as-driven',
    `    grip_share: ${rounded} # measured: braking before turn-in`,
    '  - variant: limit # all of the grip that the car file gives; a model, to be approached from the safe side',
  ];
}

function head(fit: CornerFit, source: string): string {
  const zones = fit.zones.length === 1 ? `zone ${fit.zones[0]}` : `zones ${fit.zones.join(', ')}`;
  const spread = ({ count, low, high }: Merged, text: (value: number) => string): string =>
    count === 1 ? '' : ` (median of ${count}, ${rangeText(text(low), text(high))})`;
  const figures = FIGURES.flatMap((figure) => {
    const found = fit.figures[figure];
    if (found === undefined) return [];
    const text = (value: number): string => metricText(figure, value);
    const { label } = FIGURE_WORDS[figure];
    return commented(
      `${label}: ${text(found.value)}${spread(found, text)}, ${found.basis}: ${found.rule}`,
    );
  });
  return [
    '# yaml-language-server: $schema=../schema/corner.schema.json',
    '#',
    ...commented(`Made from ${zones} of the log ${source}.`),
    ...commented('What was done, not what could be done: approach it from the safe side.'),
    '#',
    ...figures,
    '#',
    '# What the log could not say:',
    ...fit.unknown.flatMap((line) => commented(line, '- ')),
    ...fit.cautions.flatMap((line) => commented(`Caution: ${line}`)),
  ].join('\n');
}
