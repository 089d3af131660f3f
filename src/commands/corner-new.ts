import { mkdir, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { DEFAULT_GRIP, FIRST_LAP_GRIP, type FiveNumberMarks } from '../corner/five-numbers.ts';
import { type FiveNumberSheet, sheetFromFiveNumbers } from '../corner/sheet-from-five-numbers.ts';
import { Problem } from '../problem.ts';
import { idOfFile } from '../profile/id-of-file.ts';
import { distanceText } from '../unit-text.ts';
import { metresPerSecondFromKmh, radiansFromDegrees } from '../units.ts';
import type { Command, CommandContext, CommandInput } from './command.ts';
import { withSchemaPlace } from './schema-place.ts';

/** A zone this much longer than any line of the corner is worth a word. */
const SPARE_M = 2;

/** Makes a corner sheet for a corner that nobody has driven yet. */
export const command: Command = {
  name: 'corner new',
  summary: 'make a corner sheet from five numbers, with a goal mark and a first-lap mark',
  positionals: 'NAME|FILE.yaml',
  options: {
    'approach-kmh': { type: 'string', value: 'V', help: 'speed at the brake point' },
    'slowest-kmh': { type: 'string', value: 'V', help: 'slowest speed in the corner' },
    'zone-m': { type: 'string', value: 'M', help: 'brake point to slowest point' },
    'turn-deg': { type: 'string', value: 'DEG', help: 'angle the corner turns' },
    gear: { type: 'string', value: 'N', help: 'gear at the slowest point' },
    direction: { type: 'string', value: 'left|right', help: 'default left' },
    grip: { type: 'string', value: 'MU', help: `friction of the car (default ${DEFAULT_GRIP})` },
    out: { type: 'string', value: 'FILE', help: 'where to write it; never over an existing file' },
    json: { type: 'boolean', help: 'one JSON object instead of lines' },
  },
  examples: [
    'ebbline corner new "Pump corner" --approach-kmh 190 --slowest-kmh 95 --zone-m 110 --turn-deg 85 --gear 3',
  ],
  run: create,
};

async function create(input: CommandInput, context: CommandContext): Promise<number> {
  const name = nameIn(input);
  const { out } = input.values;
  const file = typeof out === 'string' && out !== '' ? out : fileFor(name, context.dataDir);
  const made = sheetFromFiveNumbers(
    {
      approachSpeedMps: metresPerSecondFromKmh(number(input, 'approach-kmh', 10, 500)),
      slowestSpeedMps: metresPerSecondFromKmh(number(input, 'slowest-kmh', 25, 400)),
      zoneLengthM: number(input, 'zone-m', 10, 1000),
      turnRad: radiansFromDegrees(number(input, 'turn-deg', 10, 300)),
      gear: wholeGear(input),
    },
    {
      name: isFile(name) ? idOfFile(name) : name,
      direction: direction(input),
      grip: input.values.grip === undefined ? DEFAULT_GRIP : number(input, 'grip', 0.3, 3),
    },
  );
  await writeNew(file, withSchemaPlace(made.text, file));
  if (input.values.json === true)
    context.out(`${JSON.stringify({ file, id: idOfFile(file), ...marksJson(made.marks) })}\n`);
  else context.out(report(file, made, context.units));
  const spareM = number(input, 'zone-m', 10, 1000) - made.marks.goalM;
  if (spareM > SPARE_M)
    context.err(
      `The corner needs ${spareM.toFixed(0)} m less than --zone-m says: check the speeds, or give --grip.\n`,
    );
  return 0;
}

function nameIn({ positionals }: CommandInput): string {
  const [name, ...others] = positionals;
  if (name !== undefined && others.length === 0 && /^[\p{L}\p{N}]/u.test(idOfFile(name)))
    return name;
  throw usage(
    name === undefined ? 'no name given' : 'one name is needed',
    'Give a name, in quotes where it has blanks.',
  );
}

function number({ values }: CommandInput, option: string, least: number, most: number): number {
  const text = values[option];
  const value = typeof text === 'string' && text.trim() !== '' ? Number(text) : Number.NaN;
  if (value >= least && value <= most) return value;
  throw usage(
    text === undefined ? `--${option} is missing` : `--${option} is ${JSON.stringify(text)}`,
    `Give a number from ${least} to ${most}.`,
  );
}

function wholeGear(input: CommandInput): number {
  const gear = number(input, 'gear', 1, 12);
  if (Number.isInteger(gear)) return gear;
  throw usage(`--gear is ${gear}`, 'Give a whole number from 1 to 12.');
}

function direction({ values }: CommandInput): 'left' | 'right' {
  const wanted = values.direction ?? 'left';
  if (wanted === 'left' || wanted === 'right') return wanted;
  throw usage(`--direction is ${JSON.stringify(wanted)}`, 'Use left or right.');
}

function usage(what: string, next: string): Problem {
  return new Problem(what, { where: 'corner new', next, exitCode: 2 });
}

function isFile(name: string): boolean {
  return /[/\\]/.test(name) || /\.ya?ml$/i.test(name);
}

/** A name becomes a file among the user's own corners. */
function fileFor(name: string, dataDir: string): string {
  if (isFile(name)) return name;
  const id = name
    .toLowerCase()
    .normalize('NFKD')
    .replace(/\p{M}|['’]/gu, '')
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '');
  return join(dataDir, 'corners', `${id}.yaml`);
}

/** Writes a file that is not there yet. */
async function writeNew(file: string, text: string): Promise<void> {
  try {
    await mkdir(dirname(file), { recursive: true });
    await writeFile(file, text, { flag: 'wx' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST')
      throw new Problem('the file is there already and was left as it is', {
        where: file,
        next: 'Edit it, or choose another name.',
      });
    throw new Problem(`it cannot be written: ${(error as Error).message}`, {
      where: file,
      next: 'Make the folder writable, or give the path of another file.',
    });
  }
}

function marksJson(marks: FiveNumberMarks): Record<string, number> {
  const tenths = (metres: number): number => Number(metres.toFixed(1));
  return {
    grip: marks.grip,
    goal_mark_m: tenths(marks.goalM),
    first_lap_mark_m: tenths(marks.firstLapM),
    brake_point_per_005_grip_m: tenths(marks.perGripM),
  };
}

function report(file: string, { marks }: FiveNumberSheet, units: CommandContext['units']): string {
  const place = (metres: number, decimals: number): string => distanceText(metres, units, decimals);
  return [
    `written: ${file}`,
    `goal mark       ${place(marks.goalM, 0)} before the slowest point, with a grip of ${marks.grip}`,
    `first-lap mark  ${place(marks.firstLapM, 0)} before it: what ${100 - 100 * FIRST_LAP_GRIP} % less grip would need`,
    `0.05 less grip moves the brake point ${place(marks.perGripM, 1)} back.`,
    'A starting point: approach it from the safe side, under the rules of the circuit.',
    '',
  ].join('\n');
}
