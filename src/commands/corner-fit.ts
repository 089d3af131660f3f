import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import { buildCar } from '../car/build-car.ts';
import { type CornerFit, fitCorner } from '../corner/fit/fit-corner.ts';
import { fitJson } from '../corner/fit/fit-json.ts';
import { fitSignals, type NotFitted } from '../corner/fit/fit-signals.ts';
import { fitZone } from '../corner/fit/fit-zone.ts';
import { fittedSheetText } from '../corner/fit/fitted-sheet.ts';
import type { FitWish } from '../corner/fit/zone-facts.ts';
import { Problem } from '../problem.ts';
import { zoneKeys } from '../score/zone-keys.ts';
import { fitCarOf } from '../target/derive/fit-car-of.ts';
import type { LoggedZone } from '../trace/log/logged-zone.ts';
import { speedCheck } from '../trace/log/speed-check.ts';
import type { ImportedTrace } from '../trace/log/zone-lines.ts';
import { zoneRecord } from '../trace/log/zone-record.ts';
import { radiansFromDegrees } from '../units.ts';
import { findCar } from './car-files.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { fitLines } from './corner-fit-text.ts';
import { misuseOf } from './misuse-of.ts';
import { numberOption, textOption } from './option-value.ts';
import { withSchemaPlace } from './schema-place.ts';
import { readTrace } from './trace-files.ts';
import { writeNewFile } from './write-new-file.ts';
import { zonesNamed } from './zones-named.ts';

const NAME = 'corner fit';
const misuse = misuseOf(NAME);
const LONGEST_NAME = 40;

/** Makes a corner sheet from logged braking zones. */
export const command: Command = {
  name: NAME,
  summary: 'make a corner sheet from one logged lap, with what it could not know',
  positionals: '',
  options: {
    trace: { type: 'string', value: 'NAME', help: 'imported log' },
    zone: {
      type: 'string',
      multiple: true,
      value: 'N[,N...]',
      help: 'its zone, or several of the same corner, as `trace zones` lists them',
    },
    car: { type: 'string', value: 'CAR', help: 'the car that was logged: says the share of grip' },
    name: { type: 'string', value: 'TEXT', help: 'name of the corner' },
    direction: {
      type: 'string',
      value: 'left|right',
      help: 'where the log does not say it',
    },
    'turn-deg': { type: 'string', value: 'DEG', help: 'angle turned, where the log ends before' },
    grip: { type: 'string', value: 'MU', help: 'friction, where only the speed says the radius' },
    out: {
      type: 'string',
      value: 'FILE',
      help: 'write a corner sheet; never over an existing one',
    },
    json: { type: 'boolean', help: 'one JSON object: the sheet, each number and its basis' },
  },
  examples: [
    'ebbline corner fit --trace friday --zone 3 --car gt --out my-corner.yaml',
    'ebbline corner fit --trace friday --zone 3,14,25 --name "Pump corner" --out pump-corner.yaml',
  ],
  run: fit,
};

async function fit(input: CommandInput, context: CommandContext): Promise<number> {
  const { positionals, values } = input;
  if (positionals.length > 0) throw misuse(`${positionals[0]} belongs to no option`);
  const wanted = textOption(values.trace);
  if (wanted === null)
    throw misuse('no --trace given', 'Name an imported log: `ebbline trace zones` lists them.');
  const trace = await readTrace(wanted, context.dataDir);
  const found = await fittedCorner(input, trace, context);
  const name = textOption(values.name) ?? usualName(trace, found);
  if (name.trim() === '' || [...name].length > LONGEST_NAME || /[\p{Cc}\u2028\u2029]/u.test(name))
    throw misuse(`--name is ${JSON.stringify(name)}`, `Give 1 to ${LONGEST_NAME} characters.`);
  const sheet = fittedSheetText(found, trace.name, name);
  const out = textOption(values.out);
  if (out !== null) {
    await mkdir(dirname(out), { recursive: true });
    await writeNewFile(out, withSchemaPlace(sheet, out), 'corner sheet');
  }
  if (values.json === true)
    context.out(
      `${JSON.stringify({ trace: trace.name, ...fitJson(found), sheet, written_to: out })}\n`,
    );
  else
    context.out(
      fitLines(name, found, context.units)
        .map((line) => `${line}\n`)
        .join(''),
    );
  context.err(out === null ? 'Not written: name a file with --out FILE.yaml.\n' : written(out));
  return 0;
}

/** The zone counts more than the end of a long name. */
function usualName({ name }: ImportedTrace, { zones }: CornerFit): string {
  const zone = `, zone ${zones[0]}`;
  return [...name].slice(0, LONGEST_NAME - zone.length).join('') + zone;
}

function written(out: string): string {
  return `Written to ${out}; see it with: ebbline corner show ${out}\n`;
}

async function fittedCorner(
  { values }: CommandInput,
  trace: ImportedTrace,
  { dataDir }: CommandContext,
): Promise<CornerFit> {
  if (values.zone === undefined)
    throw misuse(
      'no --zone given',
      `Name one or more of its ${trace.zones.length} that are the same corner, like --zone 3: ebbline trace zones ${trace.name}`,
    );
  const car = textOption(values.car);
  const carFile = car === null ? null : await findCar(car, dataDir);
  const wish: FitWish = {
    car: carFile === null ? null : fitCarOf(buildCar(carFile)),
    grip: numberOption('--grip', values.grip, 0.3, 4),
  };
  const turnDeg = numberOption('--turn-deg', values['turn-deg'], 5, 360);
  const said = {
    direction: direction(values),
    turnRad: turnDeg === null ? null : radiansFromDegrees(turnDeg),
  };
  const signals = zonesNamed(values.zone, trace).map((zone) => signalsOf(zone, trace));
  const usable = signals.flatMap((one) => ('reason' in one ? [] : [one]));
  const leftOut = signals.flatMap((one) => ('reason' in one ? [one] : []));
  if (usable.length === 0) throw nothingLeft(trace, leftOut);
  const fits = usable.map((one) => fitZone(one, wish));
  const fitted = fitCorner(fits, leftOut, said, wish.car?.name ?? null);
  return { ...fitted, cautions: [...fitted.cautions, ...logCautions(trace, fitted.zones)] };
}

function signalsOf(zone: LoggedZone, { summary }: ImportedTrace): ReturnType<typeof fitSignals> {
  const { brake, steeringPositive } = summary;
  const fullScale = brake === 'brake-level' ? 1 : Math.max(...zone.samples.get(brake)!);
  const keys = zoneKeys(zoneRecord(zone, brake, fullScale, steeringPositive));
  return fitSignals(zone, keys?.onsetS ?? null, steeringPositive);
}

function logCautions({ zones }: ImportedTrace, numbers: readonly number[]): string[] {
  return zones
    .filter(({ number: own }) => numbers.includes(own))
    .flatMap((zone) => {
      const check = speedCheck(zone);
      return [
        ...(zone.gaps.length > 0 ? [`rows are missing in zone ${zone.number}`] : []),
        ...(check !== null && !check.plausible
          ? [
              `zone ${zone.number}: the speed lost does not agree with its longitudinal acceleration`,
            ]
          : []),
      ];
    });
}

function nothingLeft({ name }: ImportedTrace, leftOut: readonly NotFitted[]): Problem {
  const reasons = leftOut.map(({ number: own, reason }) => `zone ${own}: ${reason}`).join('; ');
  return new Problem(`no corner can be made of that: ${reasons}`, {
    where: name,
    next: `Choose another zone: ebbline trace zones ${name}. A log without a speed needs one: --column speed=NAME in trace import.`,
  });
}

function direction({ direction: wanted }: CommandInput['values']): 'left' | 'right' | null {
  if (wanted === undefined) return null;
  if (wanted === 'left' || wanted === 'right') return wanted;
  throw misuse(`--direction is ${JSON.stringify(wanted)}`, 'Use left or right.');
}
