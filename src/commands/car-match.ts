import { buildCar } from '../car/build-car.ts';
import type { Car, PedalFeel } from '../car/car.ts';
import { topSpeedMps } from '../car/car-limits.ts';
import { matchPedal, type RigPedal } from '../car/pedal-match.ts';
import { fullScaleNewtons } from '../input/rig/load-newtons.ts';
import type { Rig } from '../input/rig/rig.ts';
import { saveRig } from '../input/rig/rig-file.ts';
import { Problem } from '../problem.ts';
import { metresPerSecondFromKmh, metresPerSecondFromMph } from '../units.ts';
import { findCar } from './car-files.ts';
import type { Command, CommandContext, CommandInput, OptionSpec } from './command.ts';
import { matchJson, matchText } from './match-text.ts';
import { oneNamed } from './one-named.ts';
import { numberOption, textOption } from './option-value.ts';
import { rigOfSource } from './rig-of-source.ts';
import { readSource, type SourceWish } from './source-wish.ts';

const measured = (value: string, help: string): OptionSpec => ({ type: 'string', value, help });

/** Compares the rig's brake pedal with what a car asks of a foot. */
export const command: Command = {
  name: 'car match',
  summary: "compare the rig's pedal force with the car's",
  positionals: 'CAR',
  options: {
    source: measured('S', 'the saved rig, or virtual, pointer, replay:FILE'),
    speed: measured('V', "km/h, or mph with --units imperial (default: the car's top speed)"),
    'travel-mm': measured('MM', "the rig's pedal: travel at full scale, measured"),
    'dead-stroke-mm': measured('MM', "the rig's pedal: travel before it resists"),
    'stiffness-n-per-mm': measured('N', "the rig's pedal: stiffness after that"),
    keep: { type: 'boolean', help: 'remember the measured values with the saved rig' },
    json: { type: 'boolean', help: 'one JSON object instead of text' },
  },
  examples: ['ebbline car match gt', 'ebbline car match prototype --speed 280 --travel-mm 30'],
  run: match,
};

async function match(input: CommandInput, context: CommandContext): Promise<number> {
  const car = buildCar(await findCar(oneNamed(input, 'car', 'car match'), context.dataDir));
  const wish = readSource(textOption(input.values.source));
  const speed = speedMps(input, context, car);
  const rig = await rigOfSource(wish, context.dataDir);
  const feel = feelOf(measuredFeel(input), rig);
  if (input.values.keep === true) await keepFeel(rig, feel, wish, context);
  const found = matchPedal(car, speed, rigPedal(rig, feel));
  if (input.values.json === true) context.out(`${JSON.stringify(matchJson(car, found))}\n`);
  else context.out(matchText(car, found, context.units));
  return 0;
}

function speedMps(input: CommandInput, { units }: CommandContext, car: Car): number {
  const speed = numberOption('--speed', input.values.speed, 1, 600);
  if (speed === null) return topSpeedMps(car);
  return units === 'metric' ? metresPerSecondFromKmh(speed) : metresPerSecondFromMph(speed);
}

/** What the driver measured on the rig's pedal. */
function measuredFeel({ values }: CommandInput): PedalFeel {
  const scaled = (name: string, factor: number, most: number): number | null => {
    const value = numberOption(`--${name}`, values[name], 0, most);
    return value === null ? null : value * factor;
  };
  return {
    travelM: scaled('travel-mm', 1e-3, 500),
    deadStrokeM: scaled('dead-stroke-mm', 1e-3, 500),
    stiffnessNpm: scaled('stiffness-n-per-mm', 1e3, 5000),
  };
}

/** What was measured now, else what is kept with the rig. */
function feelOf(measured: PedalFeel, { brakeFeel }: Rig): PedalFeel {
  return {
    travelM: measured.travelM ?? brakeFeel?.travelM ?? null,
    deadStrokeM: measured.deadStrokeM ?? brakeFeel?.deadStrokeM ?? null,
    stiffnessNpm: measured.stiffnessNpm ?? brakeFeel?.stiffnessNpm ?? null,
  };
}

async function keepFeel(
  rig: Rig,
  brakeFeel: PedalFeel,
  { kind }: SourceWish,
  { dataDir, err }: CommandContext,
): Promise<void> {
  if (kind !== 'any' && kind !== 'hid')
    throw new Problem('only a saved rig can keep what was measured', {
      where: '--keep',
      next: 'Leave --source away, or leave --keep away.',
      exitCode: 2,
    });
  await saveRig(dataDir, { ...rig, brakeFeel });
  err('Kept with the rig.\n');
}

function rigPedal({ axes }: Rig, feel: PedalFeel): RigPedal {
  const brake = axes.find(({ role }) => role === 'brake');
  if (brake === undefined)
    throw new Problem('the rig has no brake pedal', { next: 'Run `ebbline rig setup` again.' });
  return {
    ...feel,
    peakN: fullScaleNewtons(brake.calibration),
    sensor: brake.calibration.sensor,
    deadShare: brake.calibration.deadStart,
    hasWheel: axes.some(({ role }) => role === 'steering'),
  };
}
