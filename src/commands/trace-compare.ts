import { compareSides, type TooFew } from '../drill/compare/compare-sides.ts';
import { comparisonJson } from '../drill/compare/comparison-json.ts';
import { LEAST_CURVES } from '../drill/diagnosis/mean-curve.ts';
import { Problem } from '../problem.ts';
import type { LoggedZone } from '../trace/log/logged-zone.ts';
import type { ImportedTrace } from '../trace/log/zone-lines.ts';
import { zoneRecord } from '../trace/log/zone-record.ts';
import { barFromPascals } from '../units.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { type Compared, comparePage, leftOut } from './compare-page.ts';
import { type RigWish, rigSide } from './compare-reps.ts';
import { driverOption } from './driver-option.ts';
import { notCompared } from './not-compared.ts';
import { textOption, weeksOption } from './option-value.ts';
import { readTrace } from './trace-files.ts';
import { FULL_SCALE_OPTION, fullScaleOf, givenFullScale } from './trace-full-scale.ts';
import { zonesNamed } from './zones-named.ts';

const NAME = 'trace compare';
const USUAL_WEEKS = 4;

/** Holds logged braking zones against reps on the rig. */
export const command: Command = {
  name: NAME,
  summary: 'what carried over to the car: logged braking zones against reps on the rig',
  positionals: 'NAME',
  options: {
    target: { type: 'string', value: 'T', help: 'target whose reps they are held against' },
    corner: { type: 'string', value: 'K', help: 'or the corner, for reps with the live car' },
    zone: {
      type: 'string',
      multiple: true,
      value: 'N[,N...]',
      help: 'numbers of the zones of that corner, three or more (default all of the log)',
    },
    weeks: {
      type: 'string',
      value: 'N',
      help: `reps of so many weeks before the newest (default ${USUAL_WEEKS})`,
    },
    driver: { type: 'string', value: 'NAME', help: 'whose reps (default: who drove last)' },
    ...FULL_SCALE_OPTION,
    json: { type: 'boolean', help: 'one JSON object instead of text' },
  },
  examples: [
    'ebbline trace compare friday --zone 3,14,25 --target hairpin --full-scale 80',
    'ebbline trace compare friday --zone 3,14,25 --corner kiln-hairpin --weeks 2',
  ],
  run: compare,
};

async function compare(input: CommandInput, context: CommandContext): Promise<number> {
  const { positionals, values } = input;
  if (positionals.length !== 1)
    throw misuse(positionals.length === 0 ? 'no trace named' : 'more than one trace named');
  const wish = wishOf(values);
  const trace = await readTrace(positionals[0]!, context.dataDir);
  const zones = values.zone === undefined ? trace.zones : zonesNamed(values.zone, trace);
  const side = await rigSide(wish, context);
  const { brake, steeringPositive } = trace.summary;
  const fullScale = fullScaleOf(givenFullScale(input, brake), trace, side.target);
  const found = compareSides({
    target: side.target,
    rig: side.reps,
    carAt: (levelOne) =>
      zones.map((zone) => ({
        number: zone.number,
        record: zoneRecord(zone, brake, levelOne, steeringPositive),
      })),
    hardest: hardestOf(zones, trace),
    fullScale,
  });
  if ('kind' in found) throw tooFew(found, trace, zones);
  const said: Compared = { trace, zones, side, found, isWhole: values.zone === undefined };
  context.out(values.json === true ? json(said) : comparePage(said, fullScale));
  return 0;
}

function json({ trace, zones, side, found }: Compared): string {
  const { brake } = trace.summary;
  const of = { trace: trace.name, target: side.target.id, target_version: side.target.version };
  const levelOne = found.force.levelOneInCar;
  const inCar = {
    level_one_pressure_bar: isPressure(brake) ? barFromPascals(levelOne) : null,
    level_one_pedal_force_n: brake === 'pedal-force' ? levelOne : null,
    level_one_level: brake === 'brake-level' ? levelOne : null,
  };
  return `${JSON.stringify({
    ...of,
    brake,
    ...comparisonJson(found),
    ...inCar,
    rig: side.words,
    not_compared: notCompared(trace, zones, side, found),
    cautions: side.cautions,
  })}\n`;
}

const isPressure = (brake: string): boolean => brake === 'brake-front' || brake === 'brake-rear';

/** The largest value of the brake in the zones: up to it no level is cut. */
function hardestOf(zones: readonly LoggedZone[], { summary: { brake } }: ImportedTrace): number {
  const known = zones.map(({ samples }) =>
    Math.max(...samples.get(brake)!.filter((value) => !Number.isNaN(value))),
  );
  return Math.max(Number.MIN_VALUE, ...known);
}

function tooFew(few: TooFew, { name }: ImportedTrace, zones: readonly LoggedZone[]): Problem {
  const missing = (count: number, what: string): string[] =>
    count >= LEAST_CURVES ? [] : [`${LEAST_CURVES - count} more of the ${what}`];
  const needed = [
    ...missing(few.carReps, 'logged zones'),
    ...missing(few.rigReps, 'reps on the rig'),
  ];
  const why = [...leftOut('zone', few.uncomparedCar), ...leftOut('rep', few.uncomparedRig)];
  const have = `${few.carReps} of ${zones.length} zones and ${few.rigReps} reps can be compared, and it takes ${LEAST_CURVES} on each side`;
  return new Problem([have, ...why].join('. ').replace(/\.$/, ''), {
    where: name,
    next: `It takes ${needed.join(' and ')}: \`ebbline trace zones ${name}\` lists zones, \`ebbline drill\` drives reps, --weeks looks back further.`,
  });
}

function wishOf(values: CommandInput['values']): RigWish {
  const [target, corner] = [textOption(values.target), textOption(values.corner)];
  if ((target === null) === (corner === null))
    throw misuse(target === null ? 'nothing to compare with' : '--target and --corner together');
  return {
    subject: target === null ? { kind: 'corner', name: corner! } : { kind: 'target', name: target },
    driver: driverOption(values.driver, `${NAME} --driver`),
    weeks: values.weeks === undefined ? USUAL_WEEKS : weeksOption(values.weeks),
  };
}

function misuse(
  what: string,
  next = `Name all: ebbline ${NAME} NAME --zone N,N,N --target T`,
): Problem {
  return new Problem(what, { where: NAME, next, exitCode: 2 });
}
